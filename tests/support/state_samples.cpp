#include "tests/support/state_samples.hpp"

#include <array>

#include "core/state/fields.hpp"

namespace tidewright::support {
namespace {

template <class T>
constexpr bool is_array = false;
template <class T, std::size_t N>
constexpr bool is_array<std::array<T, N>> = true;

// Sets each value that it meets to something new.
class Setter {
 public:
  explicit Setter(const room::Room& room) : room_(room) {}
  long count() const { return count_; }

  template <class T>
  void operator()(std::string_view name, T& member) {
    if constexpr (std::is_class_v<T> && requires(Setter & self) { state::fields(self, member); }) {
      state::fields(*this, member);
    } else if constexpr (is_array<T>) {
      for (auto& element : member) (*this)(name, element);
    } else {
      ++count_;
      set(member);
    }
  }
  void rules(std::string_view name, auto& member) { (*this)(name, member.items); }
  void instruments(std::string_view name, auto& member) {
    for (std::size_t i = 0; i < room_.instruments.size(); ++i) (*this)(name, member[i]);
  }
  void actuators(std::string_view name, auto& member) {
    for (std::size_t i = 0; i < room_.actuators.size(); ++i) (*this)(name, member[i]);
  }
  void supplies(std::string_view name, auto& member) {
    for (std::size_t i = 0; i < room_.supplies.size(); ++i) (*this)(name, member[i]);
  }

 private:
  static void set(bool& value) { value = !value; }
  void set(std::uint8_t& value) { value = static_cast<std::uint8_t>(1 + count_ % 8); }
  void set(std::uint32_t& value) { value = static_cast<std::uint32_t>(4'000'000'000 + count_); }
  void set(float& value) { value = static_cast<float>(count_) + 0.1F; }
  void set(double& value) { value = static_cast<double>(count_) / 3; }
  void set(Instant& value) { value = Instant{Duration{1'760'000'000'000 + count_}}; }
  void set(Duration& value) { value = Duration{count_}; }
  void set(std::chrono::minutes& value) { value = std::chrono::minutes{count_}; }
  template <class Unit>
  void set(Amount<Unit>& value) {
    set(value.value);
  }
  template <class Enum>
  requires std::is_enum_v<Enum>
  void set(Enum& value) { value = static_cast<Enum>(value == Enum{2} ? 1 : 2); }
  static void set(Name& value) { value = Name("ann"); }
  static void set(Remark& value) { value = Remark("a new sensor is on its way"); }
  void set(Reason& value) {
    value = {.why = Why::wet, .subject = 0, .numbers = {static_cast<float>(count_), -0.5F, 1e9F}};
  }

  const room::Room& room_;
  long count_ = 0;
};

}  // namespace

State every_field_set(const room::Room& room) {
  State state;
  Setter setter{room};
  state::fields(setter, state);
  return state;
}

long field_count(const room::Room& room) {
  State state;
  Setter setter{room};
  state::fields(setter, state);
  return setter.count();
}

}  // namespace tidewright::support
