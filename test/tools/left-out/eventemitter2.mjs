// Stands in for the events of the rule engine in the page: nothing listens there, results come from its run. A function, as the engine's compiled classes call it.
export default function EventEmitter() {}
EventEmitter.prototype.on = () => {
  throw new Error('nothing listens to rules in the page');
};
EventEmitter.prototype.emitAsync = async () => [];
