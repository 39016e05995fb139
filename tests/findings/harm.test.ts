import { describe } from 'vitest';
import { battery } from './battery.ts';

const LAW = '21 CFR 172.575: at most 83 mg/kg of quinine in carbonated beverages';
const EGGS = '9 CFR 590.570 and FDA on eggs';
const steep = (what: string, into = '700 ml gin 40 %', pour = '60 ml') => ['A', 'Steeped (infusion):', what, into, 'steep 24 h', 'strain through cheesecloth', 'Build:', `${pour} steeped`, '60 ml soda water'].join('\n');

describe('what may hurt', () => {
  battery('egg-raw', {
    remedies: [0, 1],
    raises: [
      { text: 'A\n1 egg white\n60 ml gin 40 %\n30 ml lemon juice', why: 'a white in a sour', source: EGGS },
      { text: 'A\n30 ml egg white, held 3 min at 56 °C\n60 ml gin 40 %', why: 'held too briefly: 3.5 min at 56.7 °C are asked', source: EGGS },
      { text: 'A\n1 egg yolk\n60 ml aged rum 40 %', why: 'a yolk', source: EGGS },
      { text: 'A\n1 egg\n60 ml aged rum 40 %', why: 'a whole egg', source: EGGS },
    ],
    twins: [
      { text: 'A\n30 ml pasteurised egg white\n60 ml gin 40 %\n30 ml lemon juice', why: 'bought pasteurised', source: EGGS },
      { text: 'A\n30 ml egg white, held 4 min at 57 °C\n60 ml gin 40 %', why: 'held 4 min at 57 °C', source: EGGS },
      { text: 'A\nCustard (mix):\n100 ml cream\n2 egg yolks\n50 g sugar\nheat to 83 °C\nBuild:\n30 ml custard', why: 'cooked to 83 °C', source: EGGS },
      { text: 'A\n20 ml aquafaba\n60 ml gin 40 %\n30 ml lemon juice', why: 'no egg', source: 'by definition' },
    ],
  });
  battery('hazard-dose', {
    remedies: 'all',
    raises: [
      { text: steep('10 g cinchona bark', '500 ml water'), why: '12 % of 10 g in 500 mL is 2400 mg/kg, a third of the drink', source: LAW },
      { text: 'A\nTonic down (syrup):\n2 l tonic water\nreduce to 200 ml\n200 g sugar\nBuild:\n50 ml gin 40 %\n120 ml tonic down', why: 'tonic boiled down holds its quinine', source: LAW },
      { text: 'A\n60 ml tonic cordial\n100 ml soda water', why: 'a cordial meant for four parts of soda, with less than two', source: LAW },
      { text: 'A\n60 ml aged rum 40 %\n2 g nutmeg', why: '2 g of nutmeg in a glass', source: 'reports of nutmeg poisoning from 5 g on' },
      { text: steep('10 g cinchona bark', '200 ml neutral spirit 60 %').replace('(infusion)', '(bitters)'), why: 'bitters of the bark by the jigger', source: LAW },
      { text: 'A\nBark (pressure infusion):\n400 ml gin 40 %\n10 g cinchona bark\ncharge 2 N2O in a 500 ml siphon\nrest 5 min\nvent\nstrain through cheesecloth\nBuild:\n60 ml bark\n60 ml soda water', why: 'the bark under gas', source: LAW },
      { text: steep('3 g tonka bean'), why: '3 % of 3 g in 700 mL is over 10 mg/kg of coumarin', source: 'Directive 88/388 (repealed), alcoholic drinks' },
    ],
    twins: [
      { text: 'A\n60 ml gin 40 %\n150 ml tonic water', why: 'tonic as sold holds 25 to 60 mg/kg', source: LAW },
      { text: 'A\nNutmeg syrup (syrup):\n2 g nutmeg\n200 g sugar\n200 g water\nstrain through cheesecloth\nBuild:\n60 ml aged rum 40 %\n15 ml nutmeg syrup', why: 'a twentieth of the 2 g is in the glass', source: 'reports of nutmeg poisoning from 5 g on' },
      { text: 'A\n50 ml gin 43 %\n25 ml tonic cordial\n100 ml soda water', why: 'a cordial with its four parts of soda', source: LAW },
      { text: 'A\n60 ml aged rum 40 %\n0.2 g nutmeg', why: 'a grating of nutmeg', source: 'reports of nutmeg poisoning from 5 g on' },
      { text: steep('5 g juniper berries'), why: 'juniper has no such limit', source: 'by definition' },
    ],
    edges: [
      { text: 'A\n60 ml aged rum 40 %\n1 g nutmeg', why: 'a gram, by a scale', source: 'reports of nutmeg poisoning from 5 g on' },
    ],
  });
  battery('hazard-plant', {
    remedies: 'all',
    raises: [
      { text: steep('0.1 g cinchona bark', '500 ml water'), why: 'however little: 4 to 12 % alkaloids, unknown without an assay', source: LAW },
      { text: steep('2 g tobacco leaf'), why: 'tobacco', source: 'common practice, no source' },
      { text: steep('5 g calamus root'), why: 'calamus', source: '21 CFR 189.110' },
      { text: 'A\nDashes (bitters):\n200 ml neutral spirit 60 %\n10 g cinchona bark\nrest 7 days\nstrain through cheesecloth\nBuild:\n60 ml gin 40 %\n2 dashes dashes', why: 'bitters by the dash', source: LAW },
      { text: 'A\nGas (pressure infusion):\n400 ml gin 40 %\n5 g wormwood\ncharge 2 N2O in a 500 ml siphon\nrest 5 min\nvent\nstrain through cheesecloth\nBuild:\n60 ml gas', why: 'wormwood under gas', source: 'EU 1334/2008 Annex III: thujone' },
      { text: 'A\nBark cordial (cordial):\n5 g cinchona bark\n200 ml lime juice\n200 g sugar\nboil 5 min\nstrain through cheesecloth\nBuild:\n20 ml bark cordial\n60 ml gin 40 %', why: 'a cordial of the bark', source: LAW },
      { text: steep('50 g apricot kernels'), why: 'bitter kernels', source: 'EFSA 2016 on apricot kernels' },
    ],
    twins: [
      { text: 'A\n60 ml gin 40 %\n150 ml tonic water', why: 'tonic of stated strength', source: LAW },
      { text: steep('5 g juniper berries'), why: 'juniper', source: 'by definition' },
      { text: steep('50 g almonds'), why: 'sweet almonds', source: 'by definition' },
      { text: steep('# 2 g tobacco leaf\n2 g tea'), why: 'left out as a note', source: 'by definition' },
    ],
  });
  battery('allergen-hidden', {
    remedies: 'none',
    raises: [
      { text: 'A\nPunch (clarify with milk):\n250 ml whole milk\n100 ml lemon juice\n300 ml aged rum 40 %\nrest 2 h\nstrain through cheesecloth\nBuild:\n60 ml punch', why: 'a clear punch is still milk', source: 'EU 1169/2011 Annex II' },
      { text: 'A\nHead (foam):\n100 ml pasteurised egg white\nBuild:\n60 ml gin 40 %\n20 ml head', why: 'egg in a foam of another name', source: 'EU 1169/2011 Annex II' },
      { text: 'A\n60 ml dry vermouth 18 %', why: 'sulphites of a wine', source: 'EU 1169/2011 Annex II' },
    ],
    twins: [
      { text: 'A\n60 ml whole milk\n60 ml white rum 40 %', why: 'the line says milk', source: 'EU 1169/2011 Annex II' },
      { text: 'A\nMilk punch (clarify with milk):\n250 ml whole milk\n100 ml lemon juice\n300 ml aged rum 40 %\nrest 2 h\nstrain through cheesecloth\nBuild:\n60 ml milk punch', why: 'the prep says milk', source: 'EU 1169/2011 Annex II' },
      { text: 'A\nHead (foam):\n100 ml aquafaba\nBuild:\n60 ml gin 40 %\n20 ml head', why: 'chickpeas are none of the fourteen', source: 'EU 1169/2011 Annex II' },
    ],
  });
});
