import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import solid from 'vite-plugin-solid';
import { firstReading } from './first-reading.ts';

const packages = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  // Relative addresses: the folder works from any static server, however deep.
  base: './',
  resolve: { alias: [{ find: /^@washline\/([a-z]+)$/, replacement: `${packages}$1/src/index.ts` }] },
  plugins: [
    firstReading(packages),
    // Constant styles in a template would break the content security policy.
    solid({ solid: { inlineStyles: false } as object }),
    VitePWA({
      injectRegister: false,
      registerType: 'autoUpdate',
      manifest: {
        name: 'Washline', short_name: 'Washline', description: 'What will be in the glass', start_url: './', scope: './', display: 'standalone',
        background_color: '#EDF2EE', theme_color: '#EDF2EE', icons: [{ src: 'mark.svg', sizes: 'any', type: 'image/svg+xml' }],
      },
      workbox: { globPatterns: ['**/*.{js,css,html,svg,woff2}'], navigateFallback: 'index.html', navigateFallbackDenylist: [/\/api\//] },
    }),
  ],
  worker: { format: 'es' },
  build: { target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false }, reportCompressedSize: false, chunkSizeWarningLimit: 4000, rolldownOptions: { checks: { pluginTimings: false } } },
});
