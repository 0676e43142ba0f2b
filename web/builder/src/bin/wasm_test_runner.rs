//! Runs the engine's tests where cargo asks for it: the test runner of wasm-bindgen, pinned by this workspace's lock.

fn main() -> anyhow::Result<()> {
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args_os())
}
