export { startServer, type StartOptions, type Started } from './start.ts';
export { Share } from './share.ts';
export type { Read } from './serving.ts';
