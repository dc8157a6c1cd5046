// Asks the running bot whether it is well: exit code 0 = yes. For the container's HEALTHCHECK, so that the image needs
// no other program for it, and for a person on the same machine: node deploy/healthy.mjs
const port = process.env.FIELDBELL_HEALTH_PORT || '9464';
try {
  const response = await fetch(`http://127.0.0.1:${port}/health`, { signal: AbortSignal.timeout(4000) });
  console.log(await response.text());
  process.exitCode = response.ok ? 0 : 1;
} catch (error) {
  console.error(`No answer from the bot on port ${port}: ${error.cause?.message ?? error.message}`);
  process.exitCode = 1;
}
