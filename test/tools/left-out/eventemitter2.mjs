// Stands in for the events of the rule engine: nothing listens to them, results come from its run. A function, as the engine's compiled classes call it.
export default function EventEmitter() {}
EventEmitter.prototype.on = () => {
  throw new Error('nothing listens to rules');
};
EventEmitter.prototype.emitAsync = async () => [];
