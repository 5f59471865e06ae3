// An outside witness for an exported Bundle: npm's fhir, which has R4's definitions in a form of its own.
//   node fhir-witness.mjs BUNDLE        exit 0 it lets it pass, and refuses three that are broken; 77 where it is not installed
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
let Fhir;
try {
	({ Fhir } = createRequire(new URL('../node_modules/', import.meta.url))('fhir/fhir'));
} catch {
	console.log("skipped: npm's fhir is not installed in tests/node_modules");
	process.exit(77);
}
const bundle = JSON.parse(readFileSync(process.argv[2], 'utf8'));
const validate = value => new Fhir().validate(value, { errorOnUnexpected: true });
const faults = value => validate(value).messages.filter(m => m.severity === 'error' || m.severity === 'fatal');
const found = faults(bundle);
if (found.length) {
	console.log(found.map(m => `${m.location}: ${m.message}`).join('\n'));
	process.exit(1);
}
const first = (b, kind) => b.entry.map(e => e.resource).find(r => r.resourceType === kind);
const breaks = [b => { first(b, 'Procedure').status = 'done'; }, b => { delete first(b, 'Provenance').agent; }, b => { first(b, 'Device').udi = { name: 'x' }; }];
for (const broken of breaks) {
	const copy = structuredClone(bundle);
	broken(copy);
	if (!faults(copy).length) {
		console.log(`the witness let this pass: ${broken}`);
		process.exit(1);
	}
}
console.log('the witness lets it pass, and refuses three that are broken');
