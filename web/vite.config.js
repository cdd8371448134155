import { defineConfig } from "vite";

// The bundle goes into the Python package and is committed: who uses Colure needs no Node.
export default defineConfig({
  base: "/",
  build: {
    outDir: "../src/colure/app/web/static",
    emptyOutDir: true,
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    target: "es2022",
    chunkSizeWarningLimit: 900,
    rollupOptions: {
      output: {
        entryFileNames: "assets/[name]-[hash].js",
        chunkFileNames: "assets/[name]-[hash].js",
        // The guard takes letters, digits, - and _ for an id: one dot before the suffix is the server's own table.
        assetFileNames: "assets/[name]-[hash][extname]",
      },
    },
  },
});
