/** Units that hold an amount of their own size: "2 cans of 400 ml". */
export const HOLDERS: ReadonlySet<string> = new Set(['bottle', 'can', 'carton', 'packet', 'bottle-wine', 'bag', 'block']);
