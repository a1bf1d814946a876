//! SHA-256 (FIPS 180-4), so that packing the page needs no crate.

const ROUND: [u32; 64] = [
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5, 0xd807aa98,
    0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786,
    0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da, 0x983e5152, 0xa831c66d, 0xb00327c8,
    0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13,
    0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85, 0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819,
    0xd6990624, 0xf40e3585, 0x106aa070, 0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a,
    0x5b9cca4f, 0x682e6ff3, 0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7,
    0xc67178f2,
];

/// The digest of `bytes`, in hex.
///
/// ```
/// # use xtask::sha256::hex;
/// assert_eq!(&hex(b"abc")[..8], "ba7816bf");
/// ```
#[must_use]
pub fn hex(bytes: &[u8]) -> String {
    digest(bytes).iter().map(|word| format!("{word:08x}")).collect()
}

/// The digest of `bytes` as browsers write it (base64, RFC 4648).
///
/// ```
/// # use xtask::sha256::base64;
/// assert_eq!(&base64(b"abc")[..8], "ungWv48B");
/// ```
#[must_use]
pub fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let digest: Vec<u8> = digest(bytes).iter().flat_map(|word| word.to_be_bytes()).collect();
    let mut out = String::new();
    for three in digest.chunks(3) {
        let bits = three.iter().fold(0, |bits, byte| bits << 8 | u32::from(*byte)) << (8 * (3 - three.len()));
        for nth in 0..4 {
            let letter = LETTERS[(bits >> (18 - 6 * nth) & 63) as usize];
            out.push(if nth > three.len() { '=' } else { char::from(letter) });
        }
    }
    out
}

fn digest(bytes: &[u8]) -> [u32; 8] {
    let mut padded = bytes.to_vec();
    padded.push(0x80);
    while padded.len() % 64 != 56 {
        padded.push(0);
    }
    padded.extend_from_slice(&(bytes.len() as u64 * 8).to_be_bytes());

    let mut state: [u32; 8] =
        [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19];
    for block in padded.chunks_exact(64) {
        compress(&mut state, block);
    }
    state
}

fn compress(state: &mut [u32; 8], block: &[u8]) {
    let mut words = [0_u32; 64];
    for (word, bytes) in words.iter_mut().zip(block.chunks_exact(4)) {
        *word = u32::from_be_bytes([bytes[0], bytes[1], bytes[2], bytes[3]]);
    }
    for i in 16..64 {
        let (near, far) = (words[i - 15], words[i - 2]);
        let s0 = near.rotate_right(7) ^ near.rotate_right(18) ^ (near >> 3);
        let s1 = far.rotate_right(17) ^ far.rotate_right(19) ^ (far >> 10);
        words[i] = words[i - 16].wrapping_add(s0).wrapping_add(words[i - 7]).wrapping_add(s1);
    }
    let [mut a, mut b, mut c, mut d, mut e, mut f, mut g, mut h] = *state;
    for (word, round) in words.iter().zip(ROUND) {
        let s1 = e.rotate_right(6) ^ e.rotate_right(11) ^ e.rotate_right(25);
        let choice = (e & f) ^ (!e & g);
        let one = h.wrapping_add(s1).wrapping_add(choice).wrapping_add(round).wrapping_add(*word);
        let s0 = a.rotate_right(2) ^ a.rotate_right(13) ^ a.rotate_right(22);
        let two = s0.wrapping_add((a & b) ^ (a & c) ^ (b & c));
        (h, g, f, e) = (g, f, e, d.wrapping_add(one));
        (d, c, b, a) = (c, b, a, one.wrapping_add(two));
    }
    for (kept, new) in state.iter_mut().zip([a, b, c, d, e, f, g, h]) {
        *kept = kept.wrapping_add(new);
    }
}

#[cfg(test)]
mod tests {
    use super::hex;

    #[test]
    fn known_answers() {
        let check = |input: &[u8], expected: &str| assert_eq!(hex(input), expected);
        // FIPS 180-4 examples, and one on each side of a block's end.
        check(b"", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
        check(b"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
        check(
            b"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
        );
        check(&[b'a'; 64], "ffe054fe7ae0cb6dc65c3af9b61d5209f439851db43d0ba5997337df154668eb");
    }
}
