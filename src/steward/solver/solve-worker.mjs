/**
 * A thread of its own for the solver: solving blocks whoever calls it. Plain JavaScript, since a thread started from the
 * sources, from the tests and from the built program has to read it alike.
 */
import { parentPort } from 'node:worker_threads';
import loadHighs from 'highs';

const highs = loadHighs();

parentPort?.on('message', async ({ id, text, options }) => {
  try {
    const solved = (await highs).withModel({ format: 'lp', data: text }, (model) => {
      model.options.set(options);
      model.run();
      const { colValue } = model.getSolution();
      const values = Object.fromEntries(Array.from(colValue, (value, column) => [model.getColName(column), value]));
      return { status: model.getModelStatus(), isFeasible: model.info.get('primal_solution_status') === 2, values };
    });
    parentPort?.postMessage({ id, ...solved });
  } catch (error) {
    parentPort?.postMessage({ id, fault: String(error) });
  }
});
