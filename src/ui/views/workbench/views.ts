import { html, type TemplateResult } from 'lit';
import type { Bench } from '../../shell/bench.ts';
import type { ViewName } from '../../state/view-names.ts';

/** A view of what is on the bench; its code comes in when it is first looked at, or when there is time. */
export interface ViewPlan {
  readonly name: ViewName;
  /** as the navigation says it; null for a view that is reached from another */
  readonly label: string | null;
  /** the view whose entry in the navigation it comes under; itself where there is none */
  readonly under?: ViewName;
  /** as the window's title says it */
  readonly title: string;
  load(): Promise<unknown>;
  show(bench: Bench): TemplateResult;
}

/** In the order of the navigation. */
export const VIEWS: readonly ViewPlan[] = [
  {
    name: 'sheet',
    label: 'Sheet',
    title: 'Ventwright: the bench sheet',
    load: () => import('../sheet/sheet-view.ts'),
    show: (bench) => html`<vw-sheet-view .bench=${bench}></vw-sheet-view>`,
  },
  {
    name: 'key',
    label: 'Key',
    title: 'Ventwright: one key, every opening',
    load: () => import('../key-study/key-study-view.ts'),
    show: (bench) => html`<vw-key-study .bench=${bench}></vw-key-study>`,
  },
  {
    name: 'scale',
    label: 'Scale',
    title: 'Ventwright: the whole horn, live',
    load: () => import('../scale/scale-view.ts'),
    show: (bench) => html`<vw-scale-view .bench=${bench}></vw-scale-view>`,
  },
  {
    name: 'played',
    label: 'Played',
    title: 'Ventwright: notes played',
    load: () => import('../played/played-view.ts'),
    show: (bench) => html`<vw-played-view .bench=${bench}></vw-played-view>`,
  },
  {
    name: 'proposal',
    label: 'Proposal',
    title: 'Ventwright: the proposed setup',
    load: () => import('../proposal/proposal-view.ts'),
    show: (bench) => html`<vw-proposal-view .bench=${bench}></vw-proposal-view>`,
  },
  {
    name: 'side-by-side',
    label: 'Side by side',
    title: 'Ventwright: setups side by side',
    load: () => import('../side-by-side/side-by-side-view.ts'),
    show: (bench) => html`<vw-side-by-side .bench=${bench}></vw-side-by-side>`,
  },
  {
    name: 'links',
    label: 'Regulation',
    title: 'Ventwright: what the links allow',
    load: () => import('../regulation/links/links-view.ts'),
    show: (bench) => html`<vw-links-view .bench=${bench}></vw-links-view>`,
  },
  {
    name: 'leaks',
    label: null,
    under: 'links',
    title: 'Ventwright: what a leak costs',
    load: () => import('../regulation/leaks/leaks-view.ts'),
    show: (bench) => html`<vw-leaks-view .bench=${bench}></vw-leaks-view>`,
  },
  {
    name: 'pads',
    label: null,
    under: 'links',
    title: 'Ventwright: which pad for which cup',
    load: () => import('../regulation/pads/pads-view.ts'),
    show: (bench) => html`<vw-pads-view .bench=${bench}></vw-pads-view>`,
  },
  {
    name: 'work',
    label: null,
    under: 'links',
    title: 'Ventwright: the order of work',
    load: () => import('../regulation/work/work-view.ts'),
    show: (bench) => html`<vw-work-view .bench=${bench}></vw-work-view>`,
  },
  {
    name: 'player-sheet',
    label: null,
    under: 'sheet',
    title: 'Ventwright: the player’s sheet',
    load: () => import('../player-sheet/player-sheet-view.ts'),
    show: (bench) => html`<vw-player-sheet .bench=${bench}></vw-player-sheet>`,
  },
  {
    name: 'library',
    label: 'Library',
    title: 'Ventwright: the library',
    load: () => import('../library/library-view.ts'),
    show: (bench) => html`<vw-library-view .bench=${bench}></vw-library-view>`,
  },
  {
    name: 'new',
    label: null,
    under: 'library',
    title: 'Ventwright: a new horn',
    load: () => import('../new-horn/new-horn-view.ts'),
    show: (bench) => html`<vw-new-horn .bench=${bench}></vw-new-horn>`,
  },
  {
    name: 'notes',
    label: null,
    title: 'Ventwright: how the numbers are made',
    load: () => import('../notes/notes-view.ts'),
    show: (bench) => html`<vw-notes-view .bench=${bench}></vw-notes-view>`,
  },
];

/** The view whose entry in the navigation is marked while a view is shown. */
export function entryOf(view: ViewName): ViewName {
  return VIEWS.find(({ name }) => name === view)?.under ?? view;
}
