"""The units that the forms of the site record are filled in with, as the heads of their columns say them."""

UNITS = {
    "ip": {
        "temperature": "°F",
        "speed": "mph",
        "length": "in",
        "pressure": "psi",
        "volume": "fl oz",
        "pail": "gal",
        "film": "mils",
    },
    "si": {
        "temperature": "°C",
        "speed": "m/s",
        "length": "mm",
        "pressure": "kPa",
        "volume": "mL",
        "pail": "L",
        "film": "µm",
    },
}
