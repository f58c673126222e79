/**
 * Which cautions are about whoever does the work, those of the house and its animals, and which are about the crop alone.
 */

/** Words of harm to people and animals, and of the one harm to a garden that lasts for years: weedkiller in what is bought. */
const HARM =
  /\b(gloves?|masks?|goggles|sleeves|knees|backs?|feet|face|eyes|skins?|lungs|blades?|cut away|sharpen|poison\w*|acid|scald\w*|steams?|dust\w*|mou?ld\w*|tetanus|ill|weigh\w*|heavy|fire|wash|arsenic|lead|cables|rats|wasps|animals|dyed|treated|eat|eating|raw|weedkiller|sting\w*|burns?)\b/i;

/** Whether a caution has to stand with its work wherever the work is told. */
export function canHurt(caution: string): boolean {
  return HARM.test(caution);
}
