// Sources are run by type stripping, which needs Node 24. The npm package `node` brings it, also where the
// machine's own Node is older; `npm ci --ignore-scripts` leaves it out, and then this line says so.
const major = Number(process.versions.node.split('.')[0]);
if (major < 24) {
  console.error(
    `Fieldbell needs Node 24, this is ${process.versions.node}. Run "npm ci" (without --ignore-scripts): it brings Node 24 along.`,
  );
  process.exit(1);
}
