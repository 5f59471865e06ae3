// An outside witness for the seal: verifies a compact JWS with the public key file, and prints the payload.
//   node jws.mjs PUBLIC-FILE JWS       exit 0 right, 3 not, 77 where jose is not installed
import { readFileSync } from 'node:fs';
let jose;
try {
	jose = await import('jose');
} catch {
	console.log("skipped: npm's jose is not installed in tests/node_modules");
	process.exit(77);
}
const [file, jws] = process.argv.slice(2);
const keys = jose.createLocalJWKSet(JSON.parse(readFileSync(file, 'utf8')));
try {
	const { payload } = await jose.compactVerify(jws, keys, { algorithms: ['EdDSA'] });
	process.stdout.write(new TextDecoder().decode(payload));
} catch (e) {
	console.log(e.code ?? e.message);
	process.exit(3);
}
