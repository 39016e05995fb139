import { z } from '@hono/zod-openapi';

/** What the two operations take and give: the same schemas check a request and describe it. */
export const Health = z.object({ ok: z.literal(true), store: z.enum(['folder', 'sqlite', 'postgres']), version: z.string() }).openapi('Health');

export const ReadRequest = z.object({
  spec: z.string().openapi({ description: 'the text of a spec' }),
  variant: z.string().optional().openapi({ description: 'the variant to read' }),
  bench: z.string().optional().openapi({ description: 'the text of a bench' }),
}).openapi('ReadRequest');

const Figure = z.object({
  value: z.number(), unit: z.string(), low: z.number(), high: z.number(), skewed: z.boolean(),
  grade: z.enum(['defined', 'measured', 'own', 'compiled', 'reviewed', 'predicted', 'trade', 'memory']), method: z.string(), sources: z.array(z.string()),
}).openapi('Figure');

const Where = z.object({ path: z.array(z.union([z.string(), z.number()])).nullish(), file: z.string().optional(), line: z.number().int().optional(), column: z.number().int().optional() }).openapi('Where');

const Finding = z.object({
  code: z.string(), severity: z.enum(['stop', 'warn', 'note']), where: Where,
  margin: z.object({ value: z.number(), low: z.number(), high: z.number(), unit: z.string() }).optional(), odds: z.number().optional(),
  message: z.string(),
  remedy: z.object({ say: z.string(), splices: z.array(z.object({ from: z.number().int(), to: z.number().int(), insert: z.string() })) }).optional(),
  sources: z.array(z.string()),
}).openapi('Finding');

const Problem = z.object({ code: z.string().optional(), message: z.string(), where: Where.optional() }).openapi('Problem');

export const Reading = z.object({
  drink: z.string(), variant: z.string().nullable(), partial: z.boolean(), figures: z.record(z.string(), Figure),
  stages: z.array(z.looseObject({ step: z.string() })), preps: z.record(z.string(), z.looseObject({ method: z.string() })), glass: z.looseObject({ name: z.string() }).nullable(),
  standard_drinks: z.record(z.string(), z.number()), allergens: z.array(z.looseObject({ group: z.string() })), vegan: z.boolean(), vegetarian: z.boolean(),
  assumed: z.array(z.looseObject({ key: z.string() })), findings: z.array(Finding), accepted: z.array(Finding),
}).openapi('Reading');

export const ProblemDetails = z.object({
  type: z.string(), title: z.string(), status: z.number().int(), detail: z.string(),
}).openapi('ProblemDetails');

export const Unreadable = ProblemDetails.extend({ problems: z.array(Problem), reading: Reading.optional() }).openapi('Unreadable');
