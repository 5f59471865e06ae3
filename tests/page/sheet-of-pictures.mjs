// Puts pictures side by side, as from a distance: node tests/page/sheet-of-pictures.mjs OUT.png WIDTH COLUMNS FILES…
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { browser } from './browser.mjs';

const [out, width, columns, ...files] = process.argv.slice(2);
const b = await browser(), page = await b.newPage({ viewport: { width: width * columns + 12 * columns, height: 100 } });
const figure = (f) => `<figure><img width=${width} src="data:image/png;base64,${readFileSync(f).toString('base64')}"><figcaption>${basename(f)}</figcaption></figure>`;
await page.setContent(`<style>body{margin:0;display:grid;grid-template-columns:repeat(${columns},1fr);gap:8px;background:#777}figure{margin:0}figcaption{font:12px sans-serif;color:#fff}</style>${files.map(figure).join('')}`);
await page.screenshot({ path: out, fullPage: true });
await b.close();
