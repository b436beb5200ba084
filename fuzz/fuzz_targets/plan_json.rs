#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    if let Err(broken) = tubewright_doors::Door::PlanJson.hand_in(bytes) {
        panic!("{broken}");
    }
});
