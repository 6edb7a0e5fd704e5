"""A home through time: household, softener, brine tank, control and heater, event by event.

`visit.visit` is the door: a sampled home with a fault, simulated up to a technician's visit.
`story.Story` lives the days of one home; everything else is what it is made of.
"""
