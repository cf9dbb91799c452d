package org.benchtrail.core.integrity;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/** RFC 9162 section 2.1 word for word, by the JDK alone: what the program's own tree is held against. */
final class NaiveTree {
    private NaiveTree() {}

    static byte[] sha(byte[]... parts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (byte[] part : parts) {
                digest.update(part);
            }
            return digest.digest();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    static String hex(byte[] bytes) {
        return HexFormat.of().formatHex(bytes);
    }

    private static int split(int n) {
        int k = 1;
        while (k * 2 < n) {
            k *= 2;
        }
        return k;
    }

    static byte[] root(List<byte[]> d) {
        if (d.isEmpty()) {
            return sha();
        }
        if (d.size() == 1) {
            return sha(new byte[] {0}, d.get(0));
        }
        int k = split(d.size());
        return sha(new byte[] {1}, root(d.subList(0, k)), root(d.subList(k, d.size())));
    }

    static List<String> path(int m, List<byte[]> d) {
        List<String> path = new ArrayList<>();
        if (d.size() > 1) {
            int k = split(d.size());
            path.addAll(m < k ? path(m, d.subList(0, k)) : path(m - k, d.subList(k, d.size())));
            path.add(hex(root(m < k ? d.subList(k, d.size()) : d.subList(0, k))));
        }
        return path;
    }

    static List<String> proof(int m, List<byte[]> d) {
        return subproof(m, d, true);
    }

    private static List<String> subproof(int m, List<byte[]> d, boolean b) {
        List<String> path = new ArrayList<>();
        if (m == d.size()) {
            if (!b) {
                path.add(hex(root(d)));
            }
            return path;
        }
        int k = split(d.size());
        path.addAll(m <= k ? subproof(m, d.subList(0, k), b) : subproof(m - k, d.subList(k, d.size()), false));
        path.add(hex(root(m <= k ? d.subList(k, d.size()) : d.subList(0, k))));
        return path;
    }
}
