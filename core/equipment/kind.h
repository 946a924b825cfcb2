#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/id.h"
#include "core/equipment/cut.h"
#include "core/equipment/picture.h"
#include "core/quantity/figure.h"
#include "core/quantity/quantity.h"
#include "core/quantity/temperature.h"

namespace dampward::equipment {

// What happens to a part when its unit is coated.
enum class Treatment {
  spray,
  brush,   // lacquer only by brush
  bare,    // stays uncoated and needs no mask
  mask,    // stays in place, covered
  remove,  // comes out before heat and solvent, treated apart
};

enum class Shape { none, plate, cylinder, sphere };

// How far drying is asked of a part; none given: its material decides.
enum class DryTarget { surface, porous, deep };

// A heat limit the shop itself gives for one part.
struct GivenLimit {
  Temperature limit;
  std::optional<TemperatureStep> margin;  // none given: the advised margin for how the limit is known
  Mark mark = Mark::doubtful;             // measured where the shop melted a scraping or read a rating plate
  std::string source;
};

struct Part {
  PartId id;
  std::string name;
  std::vector<MaterialId>
      materials;  // one; or all the plausible ones where nobody knows; none: no plausible material
  Figure<double> count;
  Figure<Mass> mass_each;
  Shape shape = Shape::none;
  Figure<Length>
      thickness;       // plate: full thickness (a winding: its axial length); cylinder, sphere: diameter
  int open_faces = 0;  // plate: 1 or 2 faces water can leave through
  std::optional<GivenLimit> limit;
  std::optional<DryTarget> dry_target;
  std::optional<Length> dry_depth;  // plates: dry down to here is enough
  bool traps_damp = false;
  Treatment treatment = Treatment::bare;
  std::vector<std::string> mask;  // what of it is covered: contacts, adjustments, sockets, plug ends
  std::optional<Cut> cut = {};    // to cover it with; none: nobody wrote down its size
  std::string tighten;            // fastening to tighten before coating, because film under it insulates
  std::string loosen;             // what is loosened so that both sides are reached
  std::string touch_up;           // what is touched up after unmasking
  bool shield = false;            // taken off before heat and coating, put back after
  bool valve = false;  // a plug-in valve: stays as the mask of its socket or comes out, as the shop chooses
  bool carrying = false;          // carrying case, strap or webbing: a part of its own
  std::vector<HazardId> hazards;  // what in it can hurt someone
  std::string note;
};

enum class Operation {
  test,
  strip,
  clean,
  mask,
  load,
  unload,
  coat,
  unmask,
  touch_up,
  mark,
  reassemble,
  retest,
};

struct Labour {
  Range<Duration> hands_on;
  int people = 1;
  Mark mark = Mark::estimate;
  std::string settle;
};

// How a unit is coated.
enum class CoatingWay { spray_stripped, brush_assembled };

enum class ValveChoice { stay_as_masks, come_out };

// A kind of equipment: what a unit of it is made of and how it is worked on. Parts keep their order.
struct Kind {
  KindId id;
  std::string name;
  KindId like;  // the archetype or kind it was described from; empty for an archetype
  Figure<Length> length, width, height;  // outer box
  Figure<Mass> mass;                     // as received
  Figure<Area> spray_area_stripped, spray_area_assembled;
  Figure<double> contacts;   // contact points to mask
  Figure<Duration> masking;  // hands-on time to mask the assembled or stripped unit for spraying
  CoatingWay usual_way = CoatingWay::brush_assembled;
  std::string way_reason;
  std::vector<PartId> heavy_lump;  // parts that heat slowest together (core and winding of the heaviest iron)
  bool airtight = false;           // its case closes airtight
  bool semiconductors = false;     // insulation tester only with these out
  bool transmits = false;          // tested into a dummy load
  std::vector<Part> parts;
  std::map<Operation, Labour> labour;
  std::optional<Picture> picture = {};
};

// Area of the outer box at its typical size.
Area outer_area(const Kind& kind);
// Volume of the outer box at its high size, as an oven must hold it.
Volume outer_volume(const Kind& kind);
// nullptr: the kind has no such part.
const Part* find_part(const Kind& kind, const PartId& id);

}  // namespace dampward::equipment
