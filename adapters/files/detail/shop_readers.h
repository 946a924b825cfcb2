#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "adapters/files/detail/shop_document.h"
#include "adapters/files/proof.h"
#include "adapters/files/table_reader.h"
#include "workbench/workshop.h"

// One reader for each table of a shop folder. Each reads on after a fault, so that all are told at once.
namespace dampward::files::detail {

// [site]. The lacquer in use is checked by the caller, once all lacquers are known.
void read_site(const ShopDocument& document, const std::filesystem::path& folder, shop::Shop& shop,
               Proof& proof);
// [power]; none: no limit was written down. Guns must be there already: with a limit, what each takes of it must be known.
void read_power(const ShopDocument& document, shop::Shop& shop, Proof& proof);
// [ovens.*]; walls are the known constructions.
void read_ovens(const ShopDocument& document, const workbench::WallTable& walls, shop::Shop& shop,
                Proof& proof);
// [spray] and [guns.*].
void read_spray(const ShopDocument& document, shop::Shop& shop, Proof& proof);
// [crew.*], [stations.*], [instruments.*].
void read_crew(const ShopDocument& document, shop::Shop& shop, Proof& proof);
// [costs]; none: all of them as usual.
void read_costs(const ShopDocument& document, shop::Shop& shop, Proof& proof);
// [materials.*], put into the table over the shipped ones.
void read_own_materials(const ShopDocument& document, materials::MaterialTable& table, Proof& proof);
// [thinners.*], [cleaners.*], [lacquers.*] in this order.
void read_own_liquids(const ShopDocument& document, workbench::Workshop& workshop, Proof& proof);
// [kinds.*] over the shipped archetypes, with what they inherit. Materials and hazards must be there already.
void read_kinds(const ShopDocument& document, const std::vector<TomlNode>& archetypes,
                workbench::Workshop& workshop, Proof& proof);

// A composition table { xylene = "60 %", … } of the volatile part.
std::vector<materials::SolventPart> read_composition(TableReader& table, std::string_view key,
                                                     const materials::SolventTable& solvents);

}  // namespace dampward::files::detail
