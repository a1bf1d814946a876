//! Mounts the page in the browser, and does nothing anywhere else.

#[cfg(target_arch = "wasm32")]
fn main() {
    use snugfold::{ui, web};

    web::trouble::tell_why();
    web::here::once_seen(|| web::mount(|place| ui::placed::place(ui::app::app(), place)));
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!("Snugfold is a web page. To build it and open it here: cargo xtask serve");
}
