// From paper to fields: bwip-js draws the symbol, zxing-wasm reads the picture, and what it read, AIM identifier
// included, goes through code_read. Both are npm's, MIT and Apache-2.0; neither knows this project.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Tally, ask, bracketed, label, library, random } from './oracle.mjs';

const bwip = (await library('bwip-js')).default;
const { prepareZXingModule, readBarcodes } = await library('zxing-wasm/reader');
const wasm = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
await prepareZXingModule({ overrides: { wasmBinary: readFileSync(wasm) }, fireImmediately: true });

const r = random(7);
const tally = new Tally();
const jobs = [];

// [symbol of bwip-js, its text, the AIM identifier that must come, what our answer must say]
const gs1 = (symbol, aim) => {
	let elements;
	do // ISO/IEC 18004 doubles '%' beside FNC1 in one mode only; the two libraries differ on the other
		elements = label(r);
	while (symbol === 'gs1qrcode' && bracketed(elements).includes('%'));
	jobs.push([symbol, bracketed(elements), aim, (a) => a.kind === 'gs1' && a.carrier === 'gs1' &&
		bracketed(a.elements.map((e) => [e.ai, e.value])) === bracketed(elements)]);
};
for (let n = 0; n < 60; n++) {
	gs1('gs1datamatrix', ']d2');
	gs1('gs1qrcode', ']Q3');
}
// GS1-128 holds 48 characters; one-element labels and the shorter ones fit.
for (let n = 0; n < 60; n++) {
	let elements;
	do
		elements = label(r);
	while (bracketed(elements).length > 44);
	jobs.push(['gs1-128', bracketed(elements), ']C1', (a) => a.kind === 'gs1' &&
		bracketed(a.elements.map((e) => [e.ai, e.value])) === bracketed(elements)]);
}
// HIBC: the text without '+' and check character, which the generator adds.
const hibc = [
	['A123BJC5D6E71', { product: '+A123BJC5D6E71' }],
	['A99912345/$$52001510X3/16D20111212/S77DEFG45',
		{ product: '+A99912345', lot: '10X3', expiry: '2020-01-15', made: '2011-12-12', serial: '77DEFG45' }],
	['A99912345/$$8243200131LOT', { product: '+A99912345', lot: 'LOT', expiry: '2020-01-31', quantity: 24 }],
	['$$52001510X3G', { lot: '10X3', expiry: '2020-01-15', wants: 'the secondary with link G needs its primary' }],
];
for (const symbol of ['hibcdatamatrix', 'hibccode128', 'hibcqrcode', 'hibccode39'])
	for (const [text, fields] of hibc)
		jobs.push([symbol, text, '', (a) => a.kind === 'hibc' &&
			Object.entries(fields).every(([key, value]) => a[key] === value)]);
for (const [symbol, text, product] of [['ean13', '4006381333931', '04006381333931'], ['upca', '036000291452', '00036000291452'],
	['ean8', '96385074', '00000096385074'], ['itf14', '10614141123459', '10614141123459']])
	jobs.push([symbol, text, '', (a) => a.kind === 'trade item' && a.product === product]);
// Our own: the stores' item label as it is and as it was, a slip and a card.
jobs.push(['gs1datamatrix', '(91)PBC0000000157', ']d2', (a) => a.kind === 'own' && a.own.kind === 'item label' && a.own.number === 1]);
jobs.push(['gs1datamatrix', '(91)PBC070000004103', ']d2', (a) => a.own?.kind === 'item label' && a.own.number === 41 && a.own.station === 7]);
jobs.push(['code128', 'BTBC40700000410184215324', ']C0', (a) => a.own?.kind === 'slip' && a.own.number === 41 && a.own.proof === '842153']);
jobs.push(['code128', 'BTBC10104051', ']C0', (a) => a.kind === 'own' && a.own.name === 'OFF' && a.own.room === 1]);

const scans = [];
for (const [symbol, text] of jobs) {
	const png = await bwip.toBuffer({ bcid: symbol, text, scale: 3, padding: 12, backgroundcolor: 'FFFFFF', validatecheck: false });
	const formats = symbol === 'hibccode39' ? ['Code39Std'] : []; // Full ASCII would read '+A' as 'a'
	const found = await readBarcodes(new Uint8Array(png), { tryHarder: true, maxNumberOfSymbols: 1, formats });
	scans.push(found[0]?.isValid ? found[0].symbologyIdentifier + Buffer.from(found[0].bytes).toString('latin1') : '');
}
const answers = ask(scans);
jobs.forEach(([symbol, text, aim, right], i) => {
	if (!scans[i])
		tally.leave(`zxing-wasm finds no ${symbol} in the picture`);
	else if (!scans[i].startsWith(aim))
		tally.fail(`${symbol} ${text}: ${JSON.stringify(scans[i])} has not the identifier ${aim}`);
	else if (answers[i].ok && right(answers[i]))
		tally.pass();
	else
		tally.fail(`${symbol} ${text}: ${JSON.stringify(scans[i])}: ${JSON.stringify(answers[i])}`);
});
tally.end('pictures drawn by bwip-js and read by zxing-wasm');
