#include "adapters/pdf/code.h"

#include <zint.h>

#include <memory>

#include "core/base/promise.h"
#include "core/papers/page.h"

namespace dampward::pdf {
namespace {

constexpr int level_q = 3;

struct Gone {
  void operator()(zint_symbol* symbol) const { ZBarcode_Delete(symbol); }
};

}  // namespace

std::vector<std::vector<bool>> code_of(const std::string& text) {
  DAMPWARD_PROMISE(!text.empty() && text.size() <= papers::longest_code,
                   "a code holds what its side has room for");
  const std::unique_ptr<zint_symbol, Gone> symbol(ZBarcode_Create());
  symbol->symbology = BARCODE_QRCODE;
  symbol->option_1 = level_q;
  symbol->input_mode = UNICODE_MODE;
  const auto* bytes = reinterpret_cast<const unsigned char*>(text.data());
  const int fault = ZBarcode_Encode(symbol.get(), bytes, static_cast<int>(text.size()));
  DAMPWARD_PROMISE(fault < ZINT_ERROR, symbol->errtxt);
  std::vector<std::vector<bool>> rows;
  for (int y = 0; y < symbol->rows; ++y) {
    std::vector<bool> row;
    for (int x = 0; x < symbol->width; ++x)
      row.push_back(((symbol->encoded_data[y][x / 8] >> (x % 8)) & 1U) != 0);
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace dampward::pdf
