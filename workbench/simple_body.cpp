#include "workbench/simple_body.h"

#include <algorithm>

#include "core/base/promise.h"

namespace dampward::workbench {

equipment::Kind simple_kind(const SimpleBody& body, const materials::MaterialTable& materials) {
  const materials::Material* material = materials.find(body.part);
  DAMPWARD_PROMISE(material != nullptr, "a body's part is of a known material");
  equipment::Kind kind;
  kind.id = KindId("body");
  kind.name = "the body";
  kind.length.value = body.box[0];
  kind.width.value = body.box[1];
  kind.height.value = body.box[2];
  kind.mass.value = body.mass;

  equipment::Part iron;
  iron.id = PartId("iron");
  iron.name = "its iron";
  iron.materials = {MaterialId("steel")};
  iron.count.value = 1.0;
  iron.mass_each.value = std::max(Mass{}, body.mass - body.part_mass);

  equipment::Part part;
  part.id = PartId("part");
  part.name = material->name;
  part.materials = {body.part};
  part.count.value = 1.0;
  part.mass_each.value = body.part_mass;
  part.shape = body.shape;
  part.thickness.value = body.thickness;
  part.open_faces = 2;
  if (body.limit) part.limit = equipment::GivenLimit{*body.limit, body.margin, Mark::doubtful, "as asked"};
  kind.parts = {iron, part};
  return kind;
}

}  // namespace dampward::workbench
