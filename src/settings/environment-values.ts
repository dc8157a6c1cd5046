import { z } from 'zod';

export const port = z
  .string()
  .refine((said) => /^\d{1,5}$/.test(said) && Number(said) <= 65_535, {
    error: 'is not a port: write a number from 1 to 65535, or 0 for any free one',
  })
  .transform(Number);

/** The value is never shown in a fault. */
export const secretLike = (form: RegExp, what: string) =>
  z
    .string()
    .trim()
    .regex(form, { error: `is not ${what}: copy it again` });

export const webAddress = (example: string) =>
  z
    .string()
    .trim()
    .refine((said) => /^https?:\/\//.test(said) && URL.canParse(said), {
      error: `is not a web address: write one such as ${example}`,
    });
