import { defineConfig } from "vitest/config";

/** The larder's files are imported as text, as the bundler does it. */
const drinkText = {
  name: "drink-text",
  transform(code: string, id: string) {
    return id.endsWith(".drink") ? { code: `export default ${JSON.stringify(code)};`, map: null } : null;
  },
};

export default defineConfig({
  plugins: [drinkText],
  test: { include: ["tests/**/*.test.ts"], exclude: ["tests/editor/**", "tests/bench/**", "node_modules/**"] },
});
