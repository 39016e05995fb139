export { linkOf, textOfLink } from '@washline/spec';
