// Every DataMatrix that is printed is read back by another library (zxing-wasm) from the page as a printer would
// have it.   node read-matrix.mjs BANDTALLY-PRINT SAMPLES
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';

const [program, samples] = process.argv.slice(2);
const modules = path.join(samples, '..', '..', 'tests', 'node_modules');
function skip(why) {
	console.log(`skipped: ${why}`);
	process.exit(77);
}
if (!fs.existsSync(path.join(modules, 'zxing-wasm'))) skip('zxing-wasm is not installed (config/setup --test)');
try {
	execFileSync('pdftoppm', ['-v'], { stdio: 'ignore' });
} catch {
	skip('pdftoppm is not installed (config/setup --test)');
}
const require = createRequire(path.resolve(modules, 'x.js'));
const { readBarcodes, prepareZXingModule } = require('zxing-wasm/reader');
const wasm = fs.readFileSync(path.join(modules, 'zxing-wasm/dist/reader/zxing_reader.wasm'));
await prepareZXingModule({ overrides: { wasmBinary: wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) }, fireImmediately: true });

function picture(file) {
	const b = fs.readFileSync(file);
	const [head, w, h] = /^P5\s+(\d+)\s+(\d+)\s+\d+\s/.exec(b.subarray(0, 60).toString('latin1'));
	const data = new Uint8ClampedArray(w * h * 4).fill(255);
	for (let i = 0; i < w * h; i++) data.fill(b[head.length + i], 4 * i, 4 * i + 3);
	return { data, width: +w, height: +h, colorSpace: 'srgb' };
}

async function codesOf(document, dpi) {
	const dir = fs.mkdtempSync(path.join(os.tmpdir(), 'bandtally-matrix-'));
	execFileSync(program, ['--pdf', `${dir}/p.pdf`], { input: JSON.stringify({ ...document, dpi }) });
	execFileSync('pdftoppm', ['-r', dpi, '-gray', '-aa', 'no', '-aaVector', 'no', `${dir}/p.pdf`, `${dir}/p`]);
	const found = [];
	for (const f of fs.readdirSync(dir).filter((n) => n.endsWith('.pgm')).sort())
		for (const r of await readBarcodes(picture(`${dir}/${f}`), { formats: ['DataMatrix'], tryHarder: true, textMode: 'Plain' }))
			if (r.isValid) found.push(`${r.symbologyIdentifier} ${r.text}`);
	fs.rmSync(dir, { recursive: true });
	return found;
}

let read = 0;
for (const dpi of [203, 300, 600])
	for (const name of ['pack-labels', 'limits-rectangle-labels', 'scanner-check']) {
		const document = JSON.parse(fs.readFileSync(path.join(samples, `${name}.json`)));
		const expected = document.items
			? document.items.flatMap((i) => [i.pack, i.bag]).filter(Boolean).map((c) => `]d2 91${c}`)
			: [']d2 10AB12\x1d2134CD'];
		const found = await codesOf(document, dpi);
		if (JSON.stringify(found) !== JSON.stringify(expected)) {
			console.log(`${name} at ${dpi} dpi: read ${JSON.stringify(found)}, printed ${JSON.stringify(expected)}`);
			process.exit(1);
		}
		read += found.length;
	}
console.log(`${read} DataMatrix symbols read back`);
