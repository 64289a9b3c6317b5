/** Every address of the app (long: five lines an address); each screen is a chunk of its own. */
import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import type { Place } from '#record/place.ts';
import type { FirstWords } from '#words/en/first.ts';
import type { Words } from '#words/en.ts';

export type RoomName = 'today' | 'batches' | 'formulas' | 'chambers' | 'kit';

type ScreenProps = { words: Words; place: Place; id: string };
export type Screen = LazyExoticComponent<ComponentType<ScreenProps>>;

const page = (load: () => Promise<ComponentType<ScreenProps>>): Screen =>
  lazy(async () => ({ default: await load() }));

/** `bench`: the bar of rooms gives its height to the keys. */
export type RouteOf = { path: string; room: RoomName; bench?: true } & (
  | { screen: Screen }
  | { first: LazyExoticComponent<ComponentType<{ words: FirstWords; place: Place }>> }
);

const batch = '/batches/:id';
const formula = '/formulas/:id';

export const routes: readonly RouteOf[] = [
  {
    path: '/',
    room: 'today',
    first: lazy(async () => ({ default: (await import('#screens/today/TodayScreen.tsx')).TodayScreen })),
  },
  {
    path: '/batches',
    room: 'batches',
    screen: page(async () => (await import('#screens/batches/BatchesScreen.tsx')).BatchesScreen),
  },
  {
    path: batch,
    room: 'batches',
    screen: page(async () => (await import('#screens/batch/BatchScreen.tsx')).BatchScreen),
  },
  {
    path: `${batch}/weigh-out`,
    room: 'batches',
    screen: page(async () => (await import('#screens/weigh-out/WeighOutScreen.tsx')).WeighOutScreen),
  },
  {
    path: `${batch}/bench`,
    room: 'batches',
    screen: page(async () => (await import('#screens/bench/BenchScreen.tsx')).BenchScreen),
  },
  {
    path: `${batch}/stuffing`,
    room: 'batches',
    bench: true,
    screen: page(async () => (await import('#screens/stuffing/StuffingScreen.tsx')).StuffingScreen),
  },
  {
    path: `${batch}/ferment`,
    room: 'batches',
    screen: page(async () => (await import('#screens/ferment/FermentScreen.tsx')).FermentScreen),
  },
  {
    path: `${batch}/room-file`,
    room: 'batches',
    screen: page(async () => (await import('#screens/logger/RoomFileScreen.tsx')).RoomFileScreen),
  },
  {
    path: `${batch}/hanging`,
    room: 'batches',
    screen: page(async () => (await import('#screens/hanging/HangingScreen.tsx')).HangingScreen),
  },
  {
    path: `${batch}/dryness`,
    room: 'batches',
    screen: page(async () => (await import('#screens/dryness/DrynessScreen.tsx')).DrynessScreen),
  },
  {
    path: `${batch}/what-if`,
    room: 'batches',
    screen: page(async () => (await import('#screens/what-if/WhatIfScreen.tsx')).WhatIfScreen),
  },
  {
    path: '/what-if',
    room: 'batches',
    screen: page(async () => (await import('#screens/what-if/WhatIfScreen.tsx')).RehearsalScreen),
  },
  {
    path: `${batch}/round`,
    room: 'batches',
    bench: true,
    screen: page(async () => (await import('#screens/round/RoundScreen.tsx')).RoundScreen),
  },
  {
    path: `${batch}/tags`,
    room: 'batches',
    screen: page(async () => (await import('#screens/tags/TagsScreen.tsx')).TagsScreen),
  },
  {
    path: '/tag',
    room: 'batches',
    screen: page(async () => (await import('#screens/tags/FindTagScreen.tsx')).FindTagScreen),
  },
  {
    path: `${batch}/record`,
    room: 'batches',
    screen: page(async () => (await import('#screens/record/RecordScreen.tsx')).RecordScreen),
  },
  {
    path: `${batch}/release`,
    room: 'batches',
    screen: page(async () => (await import('#screens/release/ReleaseScreen.tsx')).ReleaseScreen),
  },
  {
    path: `${batch}/photos`,
    room: 'batches',
    screen: page(async () => (await import('#screens/mould/PhotosScreen.tsx')).PhotosScreen),
  },
  {
    path: `${batch}/tasting`,
    room: 'batches',
    screen: page(async () => (await import('#screens/tasting/TastingScreen.tsx')).TastingScreen),
  },
  {
    path: '/tasting',
    room: 'batches',
    screen: page(async () => (await import('#screens/tasting/BlindScreen.tsx')).BlindScreen),
  },
  {
    path: `${batch}/compare`,
    room: 'batches',
    screen: page(async () => (await import('#screens/compare/CompareScreen.tsx')).CompareScreen),
  },
  {
    path: '/pieces/:id',
    room: 'batches',
    screen: page(async () => (await import('#screens/piece/PieceScreen.tsx')).PieceScreen),
  },
  {
    path: '/formulas',
    room: 'formulas',
    screen: page(async () => (await import('#screens/formulas/FormulasScreen.tsx')).FormulasScreen),
  },
  {
    path: '/formulas/new',
    room: 'formulas',
    screen: page(async () => (await import('#screens/formulas/FormulaEditScreen.tsx')).FormulaEditScreen),
  },
  {
    path: '/formulas/from/:id',
    room: 'formulas',
    screen: page(async () => (await import('#screens/formulas/FormulaFromScreen.tsx')).FormulaFromScreen),
  },
  {
    path: formula,
    room: 'formulas',
    screen: page(async () => (await import('#screens/formulas/FormulaScreen.tsx')).FormulaScreen),
  },
  {
    path: `${formula}/edit`,
    room: 'formulas',
    screen: page(async () => (await import('#screens/formulas/FormulaEditScreen.tsx')).FormulaEditScreen),
  },
  {
    path: `${formula}/card`,
    room: 'formulas',
    screen: page(async () => (await import('#screens/formulas/FormulaCardScreen.tsx')).FormulaCardScreen),
  },
  {
    path: `${formula}/open`,
    room: 'formulas',
    screen: page(async () => (await import('#screens/open-batch/OpenBatchScreen.tsx')).OpenBatchScreen),
  },
  {
    path: '/chambers',
    room: 'chambers',
    screen: page(async () => (await import('#screens/chambers/ChambersScreen.tsx')).ChambersScreen),
  },
  {
    path: '/chambers/:id',
    room: 'chambers',
    screen: page(async () => (await import('#screens/chambers/ChamberScreen.tsx')).ChamberScreen),
  },
  {
    path: '/chambers/:id/air-file',
    room: 'chambers',
    screen: page(async () => (await import('#screens/logger/AirFileScreen.tsx')).AirFileScreen),
  },
  {
    path: '/calendar',
    room: 'today',
    screen: page(async () => (await import('#screens/calendar/CalendarScreen.tsx')).CalendarScreen),
  },
  {
    path: '/absence',
    room: 'today',
    screen: page(async () => (await import('#screens/absence/AbsenceScreen.tsx')).AbsenceScreen),
  },
  {
    path: `${batch}/mould`,
    room: 'batches',
    screen: page(async () => (await import('#screens/mould/MouldScreen.tsx')).MouldScreen),
  },
  {
    path: '/kit',
    room: 'kit',
    screen: page(async () => (await import('#screens/kit/KitScreen.tsx')).KitScreen),
  },
  {
    path: '/kit/bench',
    room: 'kit',
    screen: page(async () => (await import('#screens/kit/BenchSetUpScreen.tsx')).BenchSetUpScreen),
  },
  {
    path: '/kit/scales',
    room: 'kit',
    screen: page(async () => (await import('#screens/kit/ScalesScreen.tsx')).ScalesScreen),
  },
  {
    path: '/kit/received',
    room: 'kit',
    screen: page(async () => (await import('#screens/kit/ReceivedScreen.tsx')).ReceivedScreen),
  },
  {
    path: '/kit/received/:id',
    room: 'kit',
    screen: page(async () => (await import('#screens/kit/ReceivedScreen.tsx')).ReceivedScreen),
  },
  {
    path: '/lots/:id/trace',
    room: 'kit',
    screen: page(async () => (await import('#screens/trace/TraceScreen.tsx')).TraceScreen),
  },
  {
    path: '/kit/keeping',
    room: 'kit',
    screen: page(async () => (await import('#screens/kit/KeepingScreen.tsx')).KeepingScreen),
  },
  {
    path: '/kit/clock',
    room: 'kit',
    screen: page(async () => (await import('#screens/record/ClockScreen.tsx')).ClockScreen),
  },
  {
    path: `${batch}/timers`,
    room: 'batches',
    screen: page(async () => (await import('#screens/timers/TimersScreen.tsx')).TimersScreen),
  },
  {
    path: '/after-fault',
    room: 'batches',
    screen: page(async () => (await import('#screens/after-fault/AfterFaultScreen.tsx')).AfterFaultScreen),
  },
  {
    path: '/lots/:id/freezing',
    room: 'kit',
    screen: page(async () => (await import('#screens/freezing/FreezingScreen.tsx')).FreezingScreen),
  },
  {
    path: '/instruments',
    room: 'kit',
    screen: page(async () => (await import('#screens/instruments/InstrumentsScreen.tsx')).InstrumentsScreen),
  },
  {
    path: '/instruments/:id',
    room: 'kit',
    screen: page(async () => (await import('#screens/instruments/InstrumentScreen.tsx')).InstrumentScreen),
  },
  {
    path: '/hazards',
    room: 'kit',
    screen: page(async () => (await import('#screens/hazards/HazardsScreen.tsx')).HazardsScreen),
  },
  {
    path: '/limits',
    room: 'kit',
    screen: page(async () => (await import('#screens/limits/LimitsScreen.tsx')).LimitsScreen),
  },
  {
    path: '/limits/examples',
    room: 'kit',
    screen: page(async () => (await import('#screens/ferment/ExamplesScreen.tsx')).ExamplesScreen),
  },
  {
    path: '/specimen',
    room: 'kit',
    screen: page(async () => (await import('#ui/Specimen.tsx')).Specimen),
  },
];
