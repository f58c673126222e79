/**
 * What can hurt whoever does a task, where tasks of several practices share it. Common practice unless a source is named.
 */

/** Where something is cut. */
export const BLADES = 'Blades: cut away from yourself, gloves on.';

/** Where a fork lifts what stands in a bed. */
export const FORK = 'Lift with bent knees, and keep your feet clear of the fork.';

/** Where dry mulch, straw or leaves are moved. */
export const MOULDY =
  'Mouldy or dusty straw and leaves: wet them, wear a mask, and leave them to others if your lungs or immunity are weak.';

/** Where leaves are carried. */
export const WET_LEAVES = 'Wet leaves are heavy: half a barrow is enough, and bend your knees.';

/** Where a pile is opened (a study of Aspergillus in windrows, 1998; the mask from memory). */
export const DUST =
  'Dust and mould spores: wet a dusty pile first, wear a mask, and leave forking to others if your lungs or immunity are weak.';

/** Where a pile is forked. From memory. */
export const LIFTING = 'Lift small forkfuls with bent knees; wash hands after.';

/** Where compost or potting mix is filled into pots or trays. */
export const POTTED =
  'Open a bag away from your face and damp what is dry: its dust carries spores. Gloves on, and wash your hands.';

/** Where a heap is opened that may be at work. */
export const HOT_INSIDE = 'A working pile can be scalding inside and steams when opened.';

/** Where bought compost or bed mix is spread (compost:S33). */
export const BOUGHT_UNTESTED =
  'Bought compost can carry lasting weedkiller: none goes on before beans have grown straight in it.';
