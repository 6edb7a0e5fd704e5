"""Where the calculators' relations and limits come from.

key -> (title, publisher, where to find it, how it was seen). "read": the figure was read there;
"from memory": the publication is named as exactly as known; "no source": a habit of the trade.
"""

SOURCES = {
    "common-practice": (
        "Common practice of the trade",
        "no publisher",
        "",
        "no source",
    ),
    "unit-definitions": (
        "Guide for the Use of the International System of Units, Special Publication 811",
        "National Institute of Standards and Technology",
        "Appendix B",
        "from memory",
    ),
    "atomic-weights": (
        "Standard atomic weights",
        "International Union of Pure and Applied Chemistry",
        "",
        "from memory",
    ),
    "hardness-classes": (
        "Hardness of Water",
        "United States Geological Survey, Water Science School",
        "",
        "from memory",
    ),
    "iron-pretreatment": (
        "Wisconsin Administrative Code NR 811.57(2), ion exchange",
        "State of Wisconsin",
        "NR 811.57",
        "read",
    ),
    "manganese-advisory": (
        "Drinking Water Health Advisory for Manganese",
        "United States Environmental Protection Agency",
        "read in an extension service's copy",
        "read",
    ),
    "indoor-use": (
        "Residential End Uses of Water, Version 2, report 4309",
        "Water Research Foundation, 2016",
        "",
        "read",
    ),
    "drop-size": (
        "How much water drips away: 0.25 mL in a drop",
        "United States Geological Survey",
        "read in a quotation",
        "read",
    ),
    "capacity-anchor": (
        "12VAC5-590-900, ion exchange softening",
        "Commonwealth of Virginia, Administrative Code",
        "20,000 grains for each cubic foot at 0.3 lb of salt for each 1,000 grains",
        "read",
    ),
    "capacity-high-dose": (
        "An examination question on the capacity of softening resin",
        "trade press",
        "30,000 grains for each cubic foot at 15 lb of salt for each cubic foot",
        "read",
    ),
    "salt-solubility": (
        "Solubility of sodium chloride, percent by weight, 0 to 100 °C",
        "Salt Institute",
        "",
        "read",
    ),
    "brine-density": (
        "Poradnik fizykochemiczny (physicochemical handbook), density of brine at 20 °C",
        "Wydawnictwa Naukowo-Techniczne, 1974",
        "1,197.2 kg/m³ at 26 percent by weight",
        "read",
    ),
    "stirred-tank": (
        "Continuous flow systems: distribution of residence times",
        "P. V. Danckwerts, Chemical Engineering Science 2, 1953",
        "the washout curve of a well-mixed vessel",
        "from memory",
    ),
    "hot-water-burns": (
        "Tap water scalds, document 5098",
        "United States Consumer Product Safety Commission",
        "read in a quotation",
        "read",
    ),
}
