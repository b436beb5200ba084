#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    if let Err(broken) = tubewright_doors::Door::BuildFile.hand_in(bytes) {
        panic!("{broken}");
    }
});
