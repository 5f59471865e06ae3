// The auditor's report as a page: the same charts as on paper, readable by everybody, printable, and asking for nothing.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { browser, skip } from './browser.mjs';
import { end, it } from './told.mjs';

let axe;
try {
	axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
} catch {
	skip('axe-core is not installed: run \'npm ci\' in tests/');
}
const bin = process.env.BANDTALLY_BIN ?? new URL('../../build/release/bin', import.meta.url).pathname;
const pictures = process.env.BANDTALLY_PICTURES ?? tmpdir();
const folder = mkdtempSync(join(tmpdir(), 'bandtally-report-'));
process.env.BANDTALLY_SOURCE ??= new URL('../..', import.meta.url).pathname;
process.env.XDG_DATA_HOME = folder;
execFileSync(join(bin, '../tests/half-year'), [folder, '7']);
const ask = (...words) => execFileSync(join(bin, 'bandtally'), ['--data', folder, 'audit', 'report', '--summary', 'none', '--from', '2026-11-30', '--to', '2027-05-30',
	'--list', join(folder, 'list.csv'), ...words], { stdio: ['ignore', 'pipe', 'ignore'], encoding: 'utf8' });
const file = join(folder, 'report.html');
ask('--page', file);
const report = JSON.parse(ask('--json')), charts = report.sections.flatMap((s) => s.charts);
const b = await browser();
const context = await b.newContext({ viewport: { width: 1280, height: 900 }, bypassCSP: true }), asked = [];
const page = await context.newPage();
page.on('request', (r) => asked.push(r.url()));
await page.goto(`file://${file}`);

await it('it has each section of the report, by name, and each figure', async () => {
	const heads = await page.locator('h2').allTextContents();
	assert.deepEqual(heads, report.sections.map((s) => s.title));
	const text = await page.locator('body').innerText();
	for (const figure of report.sections.flatMap((s) => s.figures))
		assert.ok(text.includes(figure.value), figure.value);
});

await it('each chart that the paper has is drawn, by the same program, and its values stand beside it', async () => {
	const drawn = charts.filter((c) => c.points.length);
	assert.ok(drawn.length >= 3, `${drawn.length} charts`);
	const seen = await page.evaluate(async () => Promise.all([...document.images].map(async (i) => (await i.decode(), [i.alt, i.naturalWidth]))));
	assert.deepEqual(seen.map(([alt]) => alt), drawn.map((c) => `${c.title}, ${c.unit}`));
	seen.forEach(([alt, width]) => assert.ok(width > 200, `${alt}: ${width}`));
	assert.equal(await page.locator('details tbody tr').count(), drawn.reduce((n, c) => n + c.points.length, 0));
});

await it('what stands under a chart on paper stands under it here', async () => {
	const said = await page.locator('figcaption p').allTextContents();
	assert.deepEqual(said, charts.flatMap((c) => c.says));
});

await it('axe-core finds nothing, wide, narrow, and with the values open', async () => {
	await page.addScriptTag({ path: axe });
	for (const width of [1280, 360]) {
		await page.setViewportSize({ width, height: 800 });
		await page.evaluate(() => document.querySelectorAll('details').forEach((d) => (d.open = true)));
		const r = await page.evaluate(() => window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
		assert.deepEqual(r.violations.map((v) => `${v.id}: ${v.help} ${v.nodes[0].html.slice(0, 100)}`), []);
		assert.ok(r.passes.length > 10, `only ${r.passes.length} checks ran`);
	}
});

await it('it prints on A4, nothing is cut at the side, and no chart is parted', async () => {
	await page.setViewportSize({ width: 1280, height: 900 });
	const pdf = join(folder, 'printed.pdf');
	await page.pdf({ path: pdf, format: 'A4', margin: { top: '12mm', bottom: '12mm', left: '12mm', right: '12mm' } });
	const text = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8' });
	for (const s of report.sections)
		assert.ok(text.includes(s.title), s.title);
	const wide = await page.evaluate(() => (document.body.style.width = '180mm', document.documentElement.scrollWidth - document.documentElement.clientWidth));
	assert.ok(wide <= 0, `${wide} px too wide`);
	execFileSync('pdftoppm', ['-r', '60', '-png', pdf, join(pictures, 'report-printed')]);
});

await it('it asks for nothing from anywhere, and runs no script', async () => {
	assert.deepEqual(asked.filter((u) => !u.startsWith('data:') && !u.startsWith('file://')), []);
	assert.ok(!/<script|https?:\/\/(?!www\.w3\.org)/.test(readFileSync(file, 'utf8')));
	await page.screenshot({ path: join(pictures, 'report-page.png'), fullPage: true });
});

await it('in German it says so to the browser, and each of its words is German', async () => {
	ask('--language', 'de', '--page', file);
	const german = JSON.parse(ask('--language', 'de', '--json'));
	await page.goto(`file://${file}`);
	assert.equal(await page.locator('html').getAttribute('lang'), 'de');
	assert.deepEqual(await page.locator('h2').allTextContents(), german.sections.map((s) => s.title));
	for (const [i, s] of german.sections.entries())
		assert.notEqual(s.title, report.sections[i].title);
	const text = await page.innerText('main');
	assert.doesNotMatch(text, /\b(cases|figure|value|slips|not known|held back)\b/i);
	assert.match(text, /\d,\d %/);
	assert.doesNotMatch(text, /\d\.\d %/);
});

await b.close();
rmSync(folder, { recursive: true });
end();
