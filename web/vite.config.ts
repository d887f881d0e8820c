import { defineConfig } from 'vite';

/** The pages: built into `dist/web`, where the server finds them; in development they ask the server on 8620. */
export default defineConfig({
  root: import.meta.dirname,
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'esnext',
    // The content security policy allows our own files only: nothing inlined as a data address, no inline script.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: { proxy: { '/api': { target: 'http://127.0.0.1:8620', changeOrigin: false } } },
});
