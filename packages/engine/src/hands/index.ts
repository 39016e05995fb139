export { inKitchen, KITCHENS, kitchenOf, type Kitchen } from './kitchen.ts';
export { shareOf, type Chance } from './odds.ts';
export { crowdOf, hands, handsInSteps, type Band, type Crowd, type EachHand, type Hands, type HandsAsked, type Held, type Matter, type Odds } from './hands.ts';
