// Small whole files that the tests of this folder change one thing of.
#include "job/samples.h"

namespace nook {

const char* const kRoom = R"(title = "Back bedroom, window corner"
units = "inch"

[tape]
class   = "II"
read_to = '1/16'
corner  = "block"
[level]
length = '48'
class  = '0.5 mm/m'
[level_line]
by = "laser"
[flatness]
sd    = '2 mm'
reach = '400 mm'

[[wall]]
name   = "left"
length = ['118 3/8', '118 7/16']
ends_at = "casing"
wallboard = '1/2'
baseboard = { height = '5 1/4', thickness = '9/16', shoe = '1/2', profile = [], starts = '0', ends = '118 3/8', removable = false }

[[wall.level]]
at = '36'
from = '8'
to = '56'
gap = '1/4'
gap_at = "top"
[[wall.straightedge]]
height = '40'
gaps   = [['3', '0'], ['27', '3/16'], ['51', '0']]
[[wall.plumb]]
at   = '24'
line = [['8', '2 1/16'], ['48', '2 1/4'], ['90', '2 7/16']]
[[wall.string]]
height = '40'
line   = [['3', '1'], ['60', '1 3/16'], ['115', '1']]

[wall.studs]
kind    = "wood"
spacing = '16'
width   = '1 1/2'
depth   = '3 1/2'
gravity = 0.42
found   = [{ edges = ['14 9/16', '16 1/16'], height = '48', by = "nail" },
           { edges = ['30 5/8', '32 1/8'], height = '48', by = "finder" },
           { centre = '47 1/4', height = '8', by = "finder" }]
blocking = [{ along = ['15 1/4', '31 1/4'], height = ['46', '49 1/2'] }]

[[wall.obstacle]]
kind   = "outlet"
along  = ['40', '42 3/4']
height = ['12', '16 1/2']
out    = '1/4'

[[wall]]
name = "right"
length = { is = '96 1/4', sd = '1/8', note = "behind the dresser" }
[[wall.plumb]]
at   = '30'
line = [['2', '1 1/2'], [{ from_line = '+6' }, '1 3/4']]

[[corner]]
walls  = ["left", "right"]
height = '8'
diagonals = [['36', '48', '60 7/8'], ['60', '60', ['86 1/4', '86 5/16']], ['36', '60', { is = '90', struck = true }]]
square    = [{ blade = '24', gap = '9/16', at = "tip" }]
angles    = [{ is = '91.3', blade = '12' }]
buildup   = { proud = '1/8', reach = '6' }

[[mark]]
name = "nail in the sill"
[[span]]
between = ["left/right", "nail in the sill"]
is = '101 1/4'
[[span]]
between = ["nail in the sill", { wall = "right", along = '60' }]
is = ['88 1/2', '88 9/16']

[floor]
down     = [['left', '6', '4', '40 1/8'], ['left', '60', '40', '40 1/4']]
covering = { kind = "carpet", thickness = '5/8', tack_strip = '1 1/4' }
squash   = [{ load = '180 lb', on = ['3', '1 1/4'], by = '3/8' }]
heated   = false

[ceiling]
up = [['left', '6', '4', '55 7/8']]

[[installed]]
parts    = ["left ledger", "right ledger"]
openings = [{ between = ["left ledger", "front panel"], out = '1', is = '1 1/16' }]

[access]
openings = [{ name = "bedroom door", width = '29 3/4', height = '79 1/2', leaf = '1 3/8' }]
turns    = [{ name = "hall", from = '36', to = '38', height = '95' }]
)";

const char* const kAlcove = R"(title = "Alcove under the window"
units = "mm"

[[wall]]
name = "left"
[[wall]]
name = "back"
length = '1204'
from_corner = "right"
[[wall.plumb]]
at = '300'
line = [['200', '32'], ['1000', '35']]
[[wall.plumb]]
at = '300'
from_corner = "left"
line = [['200', '32'], ['1000', '35']]
[[wall]]
name = "right"

[[corner]]
walls = ["left", "back"]
diagonals = [['600', '800', '1003']]
[[corner]]
walls = ["right", "back"]
height = '450'
diagonals = [['600', '800', '996']]
[[corner]]
walls = ["left", "back"]
height = '1200'
diagonals = [['600', '800', '1004'], ['600', '400', '724']]

[[across]]
walls = ["left", "right"]
out = '300'
height = '450'
is = '1202 mm'
)";

const char* const kDesign = R"(title = "Lookout loft"
units = "inch"
corner = ["left", "right"]
[use]
by = "child"
ages = [4, 8]
purpose = "play"
mattress = '0'

[stock.ply]
kind = "plywood"
thickness = '23/32'
sheet = ['48', '96']
density = '36 lb/ft3'
[stock.rail]
kind = "lumber"
section = ['1 1/4', '3']
lengths = ['96']
gravity = 0.50
[stock.rung]
kind = "lumber"
section = ['1 1/4', '1 1/4']

[[part]]
name  = "front panel"
stock = "ply"
shape = { size = ['37 1/4', '84'] }
cutouts = [{ name = "porthole", circle = ['18', '24'], diameter = '9 1/4' }]
place = { at = ['47', '0', '0'], u = "+y", v = "+z" }
group = "front"
show  = "front"

[[part]]
name  = "side panel"
stock = "ply"
shape = { size = ['30', '80'] }
place = { at = ['47', '36', '0'], u = "-x", v = "+z" }

[[part]]
name  = "rung"
stock = "rung"
shape = { length = '14' }
place = { at = ['2', '37', '9'], u = "+x", v = "+y" }
repeat = { count = 3, step = ['0', '0', '10 1/2'] }

[[part]]
name  = "ladder rail"
stock = "rail"
shape = { length = '80' }
place = { at = ['3/4', '39 3/4', '0'], u = "+z", v = "-y" }

[[part]]
name  = "left ledger"
stock = "rail"
shape = { length = '46' }
place = { at = ['46', '0', '38'], u = "-x", v = "+z" }

[[group]]
name = "front"
order = 4
turn = false
tight_to = ["left wall"]
parallel_to = "right wall"
height_from = "floor"

[[contact]]
part  = "front panel"
edge  = "left"
meets = "left wall"
by    = ["notch", "scribe"]
clearance = '1/8'
shop  = false
keep  = false
gap   = '0'
allow = '1/8'

[[covered]]
part = "side panel"
edge = "left"
behind = "front panel"
margin = '1/2'

[[fasten]]
part  = "left ledger"
face  = "back"
to    = "left wall"
screw = { gauge = 10, length = '3', kind = "wood", head_below = '1/8' }
per_stud = 2
load  = '500 lb'
duration = 1.0
prebored = true

[[feet]]
part = "ladder rail"
load = '200 lb'
)";

const char* const kPieces = R"(units = "inch"
[[piece]]
part = "front panel"
show_face = "up"
widths    = [['2', '37 1/4'], ['82', '37 5/16']]
heights   = [['2', '84'], ['34', '84']]
diagonals = ['91 7/8', '91 15/16']
notches   = [{ corner = "lower left", width = '3/4', height = '5 1/2' }]
)";

}  // namespace nook
