// The engine in a worker: it answers one question after the other. The page
// (engine.js) sends the compiled engine first, then questions.

importScripts("wasm_exec.js");

let ready;
const up = new Promise((done) => (ready = done));
self.engineReady = () => ready();

self.onmessage = async ({ data: { module, number, name, body } }) => {
  if (module) {
    const go = new Go();
    const instance = await WebAssembly.instantiate(module, go.importObject);
    go.run(instance);
    return;
  }
  await up;
  self.answerFromEngine(name, body, (said) => self.postMessage({ number, ...said }, [said.data.buffer]));
};
