import { defineConfig } from "vitest/config";

/** The larder's files are imported as text, as the bundler does it. */
const drinkText = {
  name: "drink-text",
  transform(code: string, id: string) {
    return id.endsWith(".drink") ? { code: `export default ${JSON.stringify(code)};`, map: null } : null;
  },
};

/** These run the bundled programs, which are built first where they are stale. */
const shipped = ["tests/protocol/**/*.test.ts", "tests/cli/shipped*.test.ts"];

export default defineConfig({
  plugins: [drinkText],
  test: {
    // No test asserts a time: a slow machine is no failure.
    testTimeout: 120_000,
    projects: [
      {
        extends: true,
        test: {
          name: "floors",
          include: ["tests/**/*.test.ts"],
          exclude: [...shipped, "tests/editor/**", "tests/bench/**"],
          // Modules hold no state but memory of what they computed, so that files may share them: loading costs more than testing.
          isolate: false,
        },
      },
      { extends: true, test: { name: "shipped", include: shipped, globalSetup: "tests/protocol/setup.ts" } },
    ],
  },
});
