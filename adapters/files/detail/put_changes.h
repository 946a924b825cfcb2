#pragma once

#include <span>
#include <vector>

#include "adapters/files/detail/shop_document.h"
#include "adapters/files/what_if.h"

namespace dampward::files::detail {

// Puts the changes over what the files say, and tells what each replaces. A key the table has not is put in, so that its reader
// judges it; a whole table may be added where names are one's own ([ovens.second]). `as_is` tells which parts a kind has
// from what it is like. Faults: a path into nothing, with the likely one.
std::vector<workbench::ChangedValue> put_changes(ShopDocument& document, std::span<const Change> changes,
                                                 const workbench::Workshop& as_is, Proof& proof);

}  // namespace dampward::files::detail
