"""The text that a kitchen starts from when none was ever written."""

STARTER = """\
# What you own. Everything here is yours to change; lines that begin with # are notes.
entremetry_kitchen: 1
name: My kitchen
measures: metric          # us, metric, au or uk: whose cups and spoons you use
room_temperature: 22 °C

ovens:
  - {name: Oven, fan: true, trays: 2}
freezers:
  - {name: Freezer, temperature: -18 °C, stands_on: wire shelf}
fridges:
  - {name: Fridge, temperature: 4 °C}
mixers:
  - {name: Stand mixer, bowls: 1}
trays:
  - {name: Baking tray, length: 400 mm, width: 300 mm, owned: 2}

# Whose hands, and when they are free; for one date write {date: 2026-12-23, start: ..., end: ...}.
# people:
#   - name: Me
#     free:
#       - {day: friday, start: '18:00', end: '22:00'}
#       - {day: saturday, start: '09:00', end: '18:00'}
#     away: [2026-12-24]

# A mould of your own: fill one cavity to the rim with water and weigh the water.
# moulds:
#   - id: my-blossom
#     name: My blossom mould
#     shape: {kind: measured, holds: 92 ml, like: {kind: hemisphere, diameter: 70 mm}}
#     cavities: 6
moulds: []
"""
