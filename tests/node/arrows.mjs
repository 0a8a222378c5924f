// The check of arrows finds each way of pointing up, in a tree made for it.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { test } from 'node:test';
import { find_arrows } from '../../ci/lib/arrows.mjs';

function tree(files) {
  const root = mkdtempSync(path.join(tmpdir(), 'arrows-'));
  for (const top of ['core', 'web', 'tests']) mkdirSync(path.join(root, top));
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(path.join(root, path.dirname(file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  }
  return root;
}

const k_bad = {
  'core/catalog/a.cpp': '#include "core/procedure/device.h"\n',
  'core/mastery/a.cpp': '#include "core/catalog/model.h"\n',
  'core/check/a.cpp': '#include <nlohmann/json.hpp>\n',
  'core/base/a.h': '#pragma once\n#include <chrono>\n',
  'core/advice/a.h': '#include <imgui.h>\n',
  'web/screens/a.cpp': '#include <imgui.h>\n',
  'web/kit/a.cpp': '#include "web/screens/app.h"\n',
  'web/kit/b.cpp': '#include <emscripten.h>\n',
  'web/shell/a.cpp': '#include "core/catalog/model.h"\n',
};

test('every arrow that points up is named with its file and line', () => {
  const found = find_arrows(tree(k_bad));
  assert.deepEqual(found.map(({ file }) => file).sort(), Object.keys(k_bad).sort());
  assert.equal(found.find(({ file }) => file === 'core/base/a.h').line, 2);
});

test('arrows that go down pass', () => {
  assert.deepEqual(find_arrows(tree({
    'core/check/a.cpp': '#include "core/mastery/model.h"\n#include <vector>\n#include "core/check/run.h"\n',
    'web/kit/a.cpp': '#include <imgui.h>\n#include "web/shell/host.h"\n',
    'web/main.cpp': '#include "web/screens/app.h"\n',
    'tests/core/a_test.cpp': '#include <gtest/gtest.h>\n#include "core/check/run.h"\n',
  })), []);
});
