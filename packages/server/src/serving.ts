import type { Share } from './share.ts';

/** Reads a spec: the Reading in the contract's JSON, null where nothing could be read, and the problems with their places. */
export type Read = (text: string, options: { readonly variant?: string; readonly bench?: string }) => Answered | Promise<Answered>;
interface Answered { readonly reading: object | null; readonly problems: readonly object[] }

/** What a server serves. */
export interface Serving {
  /** the built page */
  readonly webDir: string;
  readonly store: 'folder';
  readonly version: string;
  readonly read: Read;
  /** with it other machines of the network are let in by its code; without it this machine alone is answered */
  readonly share?: Share;
  /** told of an error nobody expected */
  readonly onFault?: (error: Error) => void;
}
