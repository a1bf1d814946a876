//! How quickly the page answers. Figures to compare builds by, not a test: on a busy
//! machine they say more about the machine.
//!
//! After `cargo xtask test page`, with what that one tells it in the environment:
//! `cargo test --test page figures -- --ignored --nocapture`.

use crate::harness::journey;

#[test]
#[ignore = "prints figures"]
fn time_from_typing_to_drawn() {
    journey(async |page| {
        page.expect_errors();
        page.open("").await;
        let field = page.find("field", "Width").await;
        let times = page
            .driver
            .execute_async(
                "const [field, done] = arguments;
                 const settled = () => new Promise((f) => {
                   const channel = new MessageChannel();
                   channel.port1.onmessage = f;
                   channel.port2.postMessage(null);
                 });
                 (async () => {
                   const times = [];
                   for (let round = 0; round < 41; round += 1) {
                     const start = performance.now();
                     field.value = round % 2 ? '3 1/2' : '3';
                     field.dispatchEvent(new InputEvent('input', { bubbles: true }));
                     await settled();
                     document.body.offsetHeight;
                     times.push(performance.now() - start);
                   }
                   // The first ones run while the program is still being compiled.
                   done(times.slice(5).sort((a, b) => a - b));
                 })();",
                vec![field.to_json().expect("a field")],
            )
            .await
            .expect("figures");
        let times: Vec<f64> = times.convert().expect("numbers");
        println!(
            "typing to drawn: {:.1} ms at best, {:.1} ms in the middle, {:.1} ms at worst",
            times[0],
            times[times.len() / 2],
            times[times.len() - 1]
        );
    });
}
