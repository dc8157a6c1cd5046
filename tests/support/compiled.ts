import { fileURLToPath } from 'node:url';

/** Where processes that tests start keep what they have compiled: the next one need not compile it again. */
const directory = fileURLToPath(new URL('../../node_modules/.cache/compiled', import.meta.url));

export const COMPILED = { NODE_COMPILE_CACHE: directory };
