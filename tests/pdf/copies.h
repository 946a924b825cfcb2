#pragma once

#include <unistd.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "adapters/pdf/pdf.h"

// Pages as a printer and a worn copier give them, and the codes a packaged reader (zbarimg) finds there.
namespace dampward::papers::test {

// A page in grey, row by row.
struct Grey {
  int width = 0, height = 0;
  std::vector<unsigned char> dots;
};

inline std::string said_by(const std::string& command) {
  std::string all;
  FILE* pipe = popen(command.c_str(), "r");
  std::array<char, 4096> buffer{};
  while (const std::size_t count = fread(buffer.data(), 1, buffer.size(), pipe))
    all.append(buffer.data(), count);
  pclose(pipe);
  return all;
}

inline Grey read_grey(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  Grey grey;
  std::string magic;
  int most = 0;
  file >> magic >> grey.width >> grey.height >> most;
  file.get();
  grey.dots.resize(static_cast<std::size_t>(grey.width) * static_cast<std::size_t>(grey.height));
  file.read(reinterpret_cast<char*>(grey.dots.data()), static_cast<std::streamsize>(grey.dots.size()));
  return grey;
}

inline void write_grey(const Grey& grey, const std::filesystem::path& path) {
  std::ofstream file(path, std::ios::binary);
  file << "P5\n" << grey.width << " " << grey.height << "\n255\n";
  file.write(reinterpret_cast<const char*>(grey.dots.data()), static_cast<std::streamsize>(grey.dots.size()));
}

// One pass through a bad copier: smeared over `radius` dots (a box, both ways), then black or white.
inline Grey copied(const Grey& page, int radius) {
  const auto smear = [&](const Grey& from, int across, int down) {
    Grey to = from;
    for (int y = 0; y < from.height; ++y) {
      for (int x = 0; x < from.width; ++x) {
        int sum = 0, count = 0;
        for (int d = -radius; d <= radius; ++d) {
          const int nx = x + d * across, ny = y + d * down;
          if (nx < 0 || ny < 0 || nx >= from.width || ny >= from.height) continue;
          sum += from.dots[static_cast<std::size_t>(ny) * static_cast<std::size_t>(from.width) +
                           static_cast<std::size_t>(nx)];
          ++count;
        }
        to.dots[static_cast<std::size_t>(y) * static_cast<std::size_t>(from.width) +
                static_cast<std::size_t>(x)] = static_cast<unsigned char>(sum / count);
      }
    }
    return to;
  };
  Grey copy = smear(smear(page, 1, 0), 0, 1);
  for (unsigned char& dot : copy.dots) dot = dot < 128 ? 0 : 255;
  return copy;
}

// What the codes of the pages say, printed at 110 dots an inch and copied so many times at 0.2 mm of smear.
inline std::vector<std::string> codes_on(const Pages& pages, int copies) {
  namespace fs = std::filesystem;
  const fs::path folder = fs::temp_directory_path() / ("dampward-codes-" + std::to_string(getpid()));
  fs::create_directories(folder);
  std::ofstream(folder / "page.pdf", std::ios::binary) << pdf::pdf_of(pages, {"codes", Instant{}});
  // A copy is made at 220 dots: 2 of them are 0.23 mm.
  const int dots = copies > 0 ? 220 : 110;
  said_by("pdftoppm -gray -r " + std::to_string(dots) + " " + (folder / "page.pdf").string() + " " +
          (folder / "page").string() + " 2>&1");
  std::vector<fs::path> pictures;
  for (const auto& entry : fs::directory_iterator(folder)) {
    if (entry.path().extension() == ".pgm") pictures.push_back(entry.path());
  }
  std::sort(pictures.begin(), pictures.end());
  std::vector<std::string> codes;
  for (const fs::path& picture : pictures) {
    Grey grey = read_grey(picture);
    for (int i = 0; i < copies; ++i) grey = copied(grey, 1);
    write_grey(grey, picture);
    const std::string found =
        said_by("zbarimg -q --raw -Sdisable -Sqrcode.enable " + picture.string() + " 2>/dev/null");
    std::string line;
    for (const char c : found) {
      if (c != '\n') {
        line += c;
        continue;
      }
      codes.push_back(line);
      line.clear();
    }
  }
  fs::remove_all(folder);
  return codes;
}

}  // namespace dampward::papers::test
