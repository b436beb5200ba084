import { defineConfig } from "vite";

// One script and one sheet with fixed names: the program builds them in.
export default defineConfig({
  base: "./",
  esbuild: { jsx: "automatic", jsxImportSource: "preact", legalComments: "none" },
  build: {
    outDir: "../crates/tubewright-page/page",
    emptyOutDir: true,
    target: "es2022",
    modulePreload: false,
    cssCodeSplit: false,
    chunkSizeWarningLimit: 2000,
    rollupOptions: {
      output: {
        inlineDynamicImports: true,
        entryFileNames: "page.js",
        assetFileNames: "page[extname]",
      },
    },
  },
});
