// Command wasm is the engine for the page as a folder of files: built for js/wasm, it runs
// in a worker of the browser, and no server answers. worker.js loads it. .ci/page puts
// both beside the page's own files.
package main
