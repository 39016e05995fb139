declare module 'virtual:first-reading' {
  const first: import('./read.ts').Read;
  export default first;
}
