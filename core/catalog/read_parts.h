// JSON places -> the parts of a family and the library: types and names only, no meaning.
// Internal to core/catalog.
#pragma once

#include "core/catalog/model.h"
#include "core/catalog/reader.h"

namespace rehale::catalog {

inline constexpr int k_schema = 1;

// Each fills what its file says; findings go to the reader's report.
void read_library(const Reader& root, Library& library);
void read_procedure(const Reader& root, Family& family);
void read_questions(const Reader& root, Family& family);

// "schema": 1, and that `key` ("family", "language") says what the folder or file name says.
void check_head(const Reader& root);
void check_named(const Reader& root, std::string_view key, const Id& expected);

[[nodiscard]] Provenance read_provenance(const Reader& place);
[[nodiscard]] Criterion read_criterion(const Reader& place);
void read_run_through(const Reader& place, RunThrough& run_through);

}  // namespace rehale::catalog
