/** What a command touches outside itself: handed in, so that a test can stand in for a terminal. */
export interface World {
  readonly stdin: AsyncIterable<Uint8Array>;
  readonly stdout: Out;
  readonly stderr: Out;
  readonly env: Readonly<Record<string, string | undefined>>;
}
interface Out { readonly write: (text: string) => unknown; readonly isTTY?: boolean }

/** Exit statuses of the contract. */
export const EXIT = { done: 0, stopped: 1, asked: 2, fault: 3 } as const;
