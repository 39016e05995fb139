export { brim, brimHeight, heightOf, heightOfRadius, radiusAt, TASTING_GLASS, volumeBelow, withBrim } from './profile.ts';
export type { Profile } from './profile.ts';
export { areaPerGram, BED, CUBE, cutOf, ICE_DENSITY, LAYER_SHARE, pieceArea, pieceBelow, pieceHeight, pieceMass, pieceRadius, pieceSize, solidShare, SPEAR, SPHERE } from './pieces.ts';
export type { Cut } from './pieces.ts';
export { ICE_FROM, ICE_TO, iceClearance, iceThatFits, LEVEL, LIQUID, OVER, stand, STANDING, standInto, WASHLINE } from './stand.ts';
export type { Levels, Standing } from './stand.ts';
