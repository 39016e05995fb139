export { startServer, type StartOptions, type Started } from './start.ts';
export type { Read } from './serving.ts';
