import tseslint from "typescript-eslint";

export default tseslint.config({ ignores: ["node_modules", "src/request/types.ts"] }, ...tseslint.configs.strict, {
  rules: {
    // Text only ever becomes text: nothing here may turn a string into markup or code.
    "no-restricted-properties": [
      "error",
      ...["innerHTML", "outerHTML", "insertAdjacentHTML"].map((property) => ({
        property,
        message: "use draw/dom.ts: text stays text",
      })),
    ],
    "no-restricted-globals": [
      "error",
      { name: "fetch", message: "use request/server.ts" },
      { name: "localStorage", message: "use shell/kept.ts" },
    ],
    "no-eval": "error",
    "@typescript-eslint/no-non-null-assertion": "off",
    "@typescript-eslint/no-dynamic-delete": "off",
    eqeqeq: "error",
  },
});
