import { defineConfig } from 'drizzle-kit';

/** `npm run migration` compares the schema with the last migration and writes the difference as the next numbered SQL file. */
export default defineConfig({
  dialect: 'sqlite',
  schema: ['./db/schema.ts', './db/schema/*.ts'],
  out: './db/migrations',
  strict: true,
  verbose: true,
});
