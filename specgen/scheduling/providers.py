"""What a resolver finds of the time of a project: its schedule."""

from specgen.resolving.provider import Provider
from specgen.scheduling.schedule import make_schedule

_PROVIDERS = (Provider(name="schedule", title="Schedule", each=(), compute=make_schedule, needs=("earliest-start",)),)
PROVIDERS = {provider.name: provider for provider in _PROVIDERS}
