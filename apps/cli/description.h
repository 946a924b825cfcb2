#pragma once

#include <string>
#include <vector>

namespace dampward::cli {

// What may stand for a value on the command line.
enum class Takes { own_words, folder, file, choice };

struct ValueText {
  std::string name;  // as the help shows it: "TIME", "a4|letter"
  Takes takes = Takes::own_words;
  std::vector<std::string> choices = {};  // Takes::choice: the words
};

struct OptionText {
  std::vector<std::string> names;  // "-h", "--help": with dashes, the long one last
  std::string text;
  std::vector<ValueText> value = {};  // one, or none: a flag
  bool required = false;
  bool repeats = false;

  const std::string& name() const { return names.back(); }
};

struct ArgumentText {
  std::string name;  // "DIR"
  std::string text;
  ValueText value;
  bool required = false;
};

struct VerbText {
  std::string name, text;
  std::vector<ArgumentText> arguments = {};  // in order
  std::vector<OptionText> options = {};
};

// The command line in the words of its help.
struct Description {
  std::string text, after;          // above the verbs, and below them
  std::vector<OptionText> options;  // without a verb
  std::vector<VerbText> verbs;
};

// The same that read_call() reads by, so that help, completion and manual cannot part ways.
Description description();

}  // namespace dampward::cli
