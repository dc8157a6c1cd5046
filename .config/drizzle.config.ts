// New migration: change src/store/schema.ts, then
// npx drizzle-kit generate --config .config/drizzle.config.ts --name what_it_does
import { defineConfig } from 'drizzle-kit';

export default defineConfig({ dialect: 'postgresql', schema: './src/store/schema.ts', out: './migrations' });
