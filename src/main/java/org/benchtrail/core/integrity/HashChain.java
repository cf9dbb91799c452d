package org.benchtrail.core.integrity;

/** The chain that makes a ticket's trail tamper-evident: every entry carries the hash of the one before it. */
public final class HashChain {
    /** What the first entry of a chain names as its previous hash: 64 zeros. */
    public static final String START = "0".repeat(64);

    private HashChain() {}

    /**
     * Hash of an entry: {@code SHA-256(0x00 || canonical)}; the leading zero byte keeps it apart from any interior hash of a
     * tree over these entries, as in RFC 6962 section 2.1.
     *
     * @param canonical the canonical bytes of the entry, with the previous hash inside and without its own
     * @return 64 lower-case hexadecimal digits
     */
    public static String hash(byte[] canonical) {
        return Hash.ofLeaf(canonical).hex();
    }

    /** Whether an entry has that hash. */
    public static boolean isHash(Hash hash, byte[] canonical) {
        return Hash.ofLeaf(canonical).equals(hash);
    }
}
