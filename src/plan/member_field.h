// A field that is a member of what it belongs to. For the tables of fields alone.
#pragma once

#include <optional>
#include <utility>

#include "plan/fields.h"

namespace laywright {

template <class T>
std::optional<double> number_of(const T& member) {
  return static_cast<double>(member);
}
template <class T>
std::optional<double> number_of(const std::optional<T>& member) {
  return member ? number_of(*member) : std::nullopt;
}

template <class T>
void assign(T& member, double value) {
  member = static_cast<T>(value);
}
template <class T>
void assign(std::optional<T>& member, double value) {
  assign(member.emplace(), value);
}

// `Member` leads to a member of the owner: [](auto& d) -> auto& { return d.spool.mass_kg; }.
template <class Owner, class Member>
Field<Owner> field(FieldInfo info, Member) {
  Field<Owner> result;
  static_cast<FieldInfo&>(result) = std::move(info);
  result.get = [](const Owner& owner) { return number_of(Member{}(owner)); };
  result.set = [](Owner& owner, double value) { assign(Member{}(owner), value); };
  return result;
}

}  // namespace laywright
