/**
 * The properties of `npm test`, each tried many times: how often stands beside it.
 */
import '../practices/properties.test.ts';
