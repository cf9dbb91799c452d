package org.benchtrail.core.integrity;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;

/** 32 bytes of SHA-256, and the ways in which a tree of leaves comes to them (RFC 6962 section 2.1, RFC 9162 section 2.1). */
public final class Hash implements Comparable<Hash> {
    public static final int BYTES = 32;

    private static final VarHandle BIG_ENDIAN =
            MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);

    /** Root of a tree without leaves: SHA-256 of nothing. */
    public static final Hash EMPTY_TREE = sha256();

    private static final byte[] LEAF = {0};
    private static final byte[] NODE = {1};

    private final byte[] bytes;

    /** The first eight bytes: nearly always these decide which of two comes first. */
    private final long first;

    private Hash(byte[] bytes) {
        this.bytes = bytes;
        this.first = (long) BIG_ENDIAN.get(bytes, 0);
    }

    /** @throws IllegalArgumentException if these are not 32 bytes */
    public static Hash of(byte[] bytes) {
        if (bytes.length != BYTES) {
            throw new IllegalArgumentException("a hash has 32 bytes, not " + bytes.length);
        }
        return new Hash(bytes.clone());
    }

    /** @throws IllegalArgumentException if these are not 64 lower-case hexadecimal digits */
    public static Hash ofHex(String hex) {
        Hash read = of(HexFormat.of().parseHex(hex));
        if (!read.hex().equals(hex)) {
            throw new IllegalArgumentException("a hash is written in lower-case digits");
        }
        return read;
    }

    /** @throws IllegalArgumentException if this is not the one way in which 32 bytes are written in base64 */
    public static Hash ofBase64(String text) {
        return of(CanonicalBase64.read(text));
    }

    /** SHA-256 of the parts one after the other. */
    public static Hash sha256(byte[]... parts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (byte[] part : parts) {
                digest.update(part);
            }
            return new Hash(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** Hash of a leaf: {@code SHA-256(0x00 || leaf)}. */
    public static Hash ofLeaf(byte[] leaf) {
        return sha256(LEAF, leaf);
    }

    /** Hash over two subtrees: {@code SHA-256(0x01 || left || right)}. */
    public static Hash ofNode(Hash left, Hash right) {
        return sha256(NODE, left.bytes, right.bytes);
    }

    public byte[] bytes() {
        return bytes.clone();
    }

    public String hex() {
        return HexFormat.of().formatHex(bytes);
    }

    public String base64() {
        return Base64.getEncoder().encodeToString(bytes);
    }

    /** By their bytes from the first on, each from 0 to 255. */
    @Override
    public int compareTo(Hash other) {
        return first == other.first
                ? Arrays.compareUnsigned(bytes, other.bytes)
                : Long.compareUnsigned(first, other.first);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Hash hash && Arrays.equals(bytes, hash.bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return hex();
    }
}
