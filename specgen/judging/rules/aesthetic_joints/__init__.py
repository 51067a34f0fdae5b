"""Do aesthetic joints divide the face into panels that can be sprayed whole, and look alike?"""
