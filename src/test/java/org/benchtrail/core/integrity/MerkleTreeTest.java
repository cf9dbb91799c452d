package org.benchtrail.core.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;

/** The tree: published roots and proofs, a recomputation word for word, and every small change that a proof must not survive. */
class MerkleTreeTest {
    private static final String RFC = "RFC 6962 section 2.1, RFC 9162 section 2.1";

    private static final List<byte[]> EIGHT = List.of(
                    "", "00", "10", "2021", "3031", "40414243", "5051525354555657", "606162636465666768696a6b6c6d6e6f")
            .stream()
            .map(HexFormat.of()::parseHex)
            .toList();

    private static final List<String> ROOTS = List.of(
            "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
            "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
            "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
            "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
            "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
            "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
            "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
            "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
            "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328");

    private static final String A = "96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7";
    private static final String B = "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e";
    private static final String C = "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4";
    private static final String D = "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b";
    private static final String E = "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0";

    private static GrownTree grown(List<byte[]> leaves) {
        GrownTree tree = new GrownTree();
        leaves.forEach(tree::add);
        return tree;
    }

    private static List<String> hex(List<Hash> path) {
        return path.stream().map(Hash::hex).toList();
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    @Test
    void rootsAndProofs_areThePublishedOnes() {
        for (int n = 0; n <= 8; n++) {
            Published.check(RFC, ROOTS.get(n), grown(EIGHT.subList(0, n)).root().hex());
            Published.check(RFC, ROOTS.get(n), grown(EIGHT).at(n).root().hex());
        }
        Published.check(
                RFC,
                "395aa064aa4c29f7010acfe3f25db9485bbd4b91897b6ad7ad547639252b4d56",
                Hash.ofLeaf(ascii("L123456")).hex());
        GrownTree tree = grown(EIGHT);
        Published.check(RFC, List.of(A, B, C), hex(tree.at(8).inclusion(0)));
        Published.check(RFC, List.of(D, E, ROOTS.get(4)), hex(tree.at(8).inclusion(5)));
        Published.check(RFC, List.of(ROOTS.get(2)), hex(tree.at(3).inclusion(2)));
        Published.check(RFC, List.of(A, B, C), hex(tree.at(8).consistency(1)));
        Published.check(RFC, List.of(B, D), hex(tree.at(5).consistency(2)));
        Published.check(
                RFC,
                List.of("0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a", E, ROOTS.get(4)),
                hex(tree.at(8).consistency(6)));
    }

    @Test
    void leafHash_ofAPublishedEntry() {
        String entry = "github.com/transparency-dev/tessera v1.0.0 h1:4OT1V9xJLa5NnYlFWWlCdZkCm18/o12rdd+bCTje7XE=\n"
                + "github.com/transparency-dev/tessera v1.0.0/go.mod h1:TLvfjlkbmsmKVEJUtzO2eb9Q2IBnK3EJ0dI4G0oxEOU=\n";
        Published.check(
                "a public log of module checksums",
                "0fa57c511c3b2ffcc0a05ad63172568d265aaf9844e9b636a0978795396f2ab1",
                Hash.ofLeaf(ascii(entry)).hex());
    }

    private static List<byte[]> some(int n) {
        return IntStream.range(0, n).mapToObj(i -> ascii("leaf " + i)).toList();
    }

    @Test
    void everySmallTree_isWhatTheRfcSaysWordForWord() {
        List<byte[]> leaves = some(40);
        GrownTree tree = grown(leaves);
        for (int n = 1; n <= leaves.size(); n++) {
            List<byte[]> part = leaves.subList(0, n);
            Hash root = Hash.of(NaiveTree.root(part));
            assertEquals(root, tree.at(n).root());
            for (int i = 0; i < n; i++) {
                List<Hash> path = tree.at(n).inclusion(i);
                assertEquals(NaiveTree.path(i, part), hex(path));
                assertTrue(MerkleProofs.includes(i, n, Hash.ofLeaf(leaves.get(i)), path, root), i + " of " + n);
            }
            for (int m = 1; m <= n; m++) {
                List<Hash> path = tree.at(n).consistency(m);
                assertEquals(NaiveTree.proof(m, part), hex(path));
                assertTrue(MerkleProofs.extendsTree(m, tree.at(m).root(), n, root, path), m + " to " + n);
            }
        }
    }

    /** Every way to change a proof a little that comes to mind: each has to be refused, for every small tree. */
    @Test
    void noProof_survivesAChange() {
        GrownTree tree = grown(some(17));
        Hash other = Hash.ofLeaf(ascii("other"));
        for (int n = 1; n <= 17; n++) {
            Hash root = tree.at(n).root();
            for (int i = 0; i < n; i++) {
                Hash leaf = Hash.ofLeaf(some(17).get(i));
                List<Hash> path = tree.at(n).inclusion(i);
                for (List<Hash> bad : changed(path, other)) {
                    assertFalse(MerkleProofs.includes(i, n, leaf, bad, root), i + " of " + n);
                }
                assertFalse(MerkleProofs.includes(i, n, other, path, root));
                assertFalse(MerkleProofs.includes(i, n, leaf, path, other));
                for (int j = -1; j <= n + 1; j++) {
                    assertFalse(j != i && MerkleProofs.includes(j, n, leaf, path, root), j + " for " + i);
                }
                assertFalse(MerkleProofs.includes(i, 0, leaf, path, root));
            }
            for (int m = 1; m <= n; m++) {
                Hash before = tree.at(m).root();
                List<Hash> path = tree.at(n).consistency(m);
                for (List<Hash> bad : changed(path, other)) {
                    assertFalse(MerkleProofs.extendsTree(m, before, n, root, bad), m + " to " + n);
                }
                assertFalse(MerkleProofs.extendsTree(m, other, n, root, path));
                assertFalse(MerkleProofs.extendsTree(m, before, n, other, path));
                assertFalse(MerkleProofs.extendsTree(0, Hash.EMPTY_TREE, n, root, path));
                assertFalse(m < n && MerkleProofs.extendsTree(n, root, m, before, path));
            }
        }
    }

    /** Whoever makes up the root as well can hash to it whatever they like: only sizes that fit the path make it one. */
    @Test
    void aPathWithAMadeUpRoot_isRefused() {
        GrownTree tree = grown(some(8));
        Hash above = Hash.ofLeaf(ascii("above"));
        List<Hash> up = new ArrayList<>(tree.at(8).inclusion(5));
        up.add(above);
        Hash root = tree.at(8).root();
        Hash made = Hash.ofNode(above, root);
        assertFalse(MerkleProofs.includes(5, 8, Hash.ofLeaf(some(8).get(5)), up, made));
        List<Hash> on = new ArrayList<>(tree.at(8).consistency(3));
        on.add(above);
        assertFalse(MerkleProofs.extendsTree(3, Hash.ofNode(above, tree.at(3).root()), 8, made, on));
        assertFalse(
                MerkleProofs.extendsTree(3, root, 2, Hash.ofNode(root, above), List.of(root, above)), "a smaller tree");
    }

    private static List<List<Hash>> changed(List<Hash> path, Hash other) {
        List<List<Hash>> all = new ArrayList<>();
        for (int i = 0; i <= path.size(); i++) {
            List<Hash> longer = new ArrayList<>(path);
            longer.add(i, other);
            all.add(longer);
            if (i < path.size()) {
                List<Hash> shorter = new ArrayList<>(path);
                shorter.remove(i);
                all.add(shorter);
                List<Hash> replaced = new ArrayList<>(path);
                replaced.set(i, other);
                all.add(replaced);
                List<Hash> doubled = new ArrayList<>(path);
                doubled.add(i, path.get(i));
                all.add(doubled);
            }
        }
        return all;
    }

    @Test
    void sizesBeyondInt_areSizes() {
        long huge = Long.MAX_VALUE;
        assertFalse(MerkleProofs.includes(huge - 1, huge, Hash.EMPTY_TREE, List.of(), Hash.EMPTY_TREE));
        assertTrue(TilePath.of(0, huge / TilePath.FULL - 1, huge).isWithin(huge));
        assertThrows(IllegalArgumentException.class, () -> Hash.of(new byte[31]));
    }

    private static final List<String> SMALL = List.of(
            "leaf/1 keys 1 6ab9f1eb8f7d3388f4f9d586f66e99fd54080df2c446f0e58668b09c08a16dd0\n",
            "leaf/1 policy 1 f64551fcd6f07823cb87971cfb91446425da18286b3ab1ef935e0cbd7a69f68a\n",
            "leaf/1 ticket/40718-6 1 628b49d96dcde97a430dd4f597705899e09a968f793491e4b704cae33a40dc02\n",
            "leaf/1 ticket/40718-6 2 c44474038d459e40e4714afefa7bf8dae9f9834b22f5e8ec1dd434ecb62b512e\n",
            "leaf/1 accounts 1 f55ff16f66f43360266b95db6f8fec01d76031054306ae4a4b380598f6cfd114\n");

    @Test
    void aSmallLog_hasTheValuesOfTheSpecification() {
        GrownTree tree = new GrownTree();
        List<Leaf> leaves = SMALL.stream().map(line -> Leaf.parse(ascii(line))).toList();
        List<String> hashes = List.of(
                "0928a774a43a0199cf9c72e5997a9d8bdea2a6f6518eeae85eb5ceb3211949b7",
                "bc3792699b523ff047e1ee52ce603937e02c8c6b9becf08b8064a8dfcb06f020",
                "adec75c6cc49a70c952dda2734e4eabbc68b966196b5dd807b214930918602fb",
                "b9cf489dd3a5d0928cc792a7b36a4710a192dcb09868f90663990c0e870b4f86",
                "3c0876909ee6d938242394a08b9a0af355c4a8ed06e90f9f69aa747a39446e87");
        List<String> roots = List.of(
                hashes.get(0),
                "f8932ed7faa9ab6f89d2e6d8a036520e99e83d6309fa7a7381cf18ac1ccabf4b",
                "009a037a344fa6c7748cb6da5183e8e82433f7c931c3e42515aabee9d3ee4633",
                "b546bb8fc2877f96c737bfeaaa074941f7cb3293336aa54638b0412ed8869d84",
                "c1f7f0b027f76c5a723278a2c2dab57810e3e4d521baf88650935bbe498eb38f");
        for (int i = 0; i < 5; i++) {
            assertEquals(SMALL.get(i), new String(leaves.get(i).bytes(), StandardCharsets.US_ASCII));
            assertEquals(hashes.get(i), leaves.get(i).leafHash().hex());
            tree.add(leaves.get(i).bytes());
            assertEquals(roots.get(i), tree.root().hex());
        }
        assertEquals(
                List.of(
                        "rex1xsxJpwyVLdonNOTqu8aLlmGWtd2AeyFJMJGGAvs=",
                        "+JMu1/qpq2+J0ubYoDZSDpnoPWMJ+npzgc8YrBzKv0s=",
                        "PAh2kJ7m2TgkI5Sgi5oK81XEqO0G6Q+faap0ejlEboc="),
                tree.at(5).inclusion(3).stream().map(Hash::base64).toList());
        assertEquals(
                List.of(
                        "rex1xsxJpwyVLdonNOTqu8aLlmGWtd2AeyFJMJGGAvs=",
                        "uc9IndOl0JKMx5Kns2pHEKGS3LCYaPkGY5kMDocLT4Y=",
                        "+JMu1/qpq2+J0ubYoDZSDpnoPWMJ+npzgc8YrBzKv0s=",
                        "PAh2kJ7m2TgkI5Sgi5oK81XEqO0G6Q+faap0ejlEboc="),
                tree.at(5).consistency(3).stream().map(Hash::base64).toList());
        assertIs(
                160,
                "ac40439bb95ce8f93d02755084540185226a51d4eceb984bb357dec136ebe524",
                tree.read(tile("tile/0/000.p/5")));
        byte[] bundle = EntryBundle.write(leaves);
        assertIs(431, "2728d9f6ebad0e021a4c569abcf772edc49b43592e1651c35b280f6f5b7add32", bundle);
        assertTrue(NaiveTree.hex(bundle).startsWith("004f6c6561662f31206b6579"));
        assertEquals(leaves, EntryBundle.read(bundle));
        assertEquals("47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=", Hash.EMPTY_TREE.base64());
    }

    private static TilePath tile(String path) {
        return TilePath.parse(path).orElseThrow();
    }

    private static void assertIs(int bytes, String sha256, byte[] content) {
        assertEquals(bytes, content.length);
        assertEquals(sha256, NaiveTree.hex(NaiveTree.sha(content)));
    }

    @Test
    void aLogOf70000Leaves_hasTheValuesOfTheSpecification() {
        Map<Integer, String> roots = new TreeMap<>(Map.of(
                1, "276ce99c90915395c683dde52b4a757323bef4d7b4b9dd5e57955ef7d6cf5a2d",
                2, "7c690417ffa8c28f0032c8fc9639c7ac3ded849f082638deaa2f40197e070ee1",
                255, "3cb73ed3747b73008155ac13ab3c33541f5d46da90ddaba50ffd10d91a870c98",
                256, "28e34fce7641276ab55f663fd0e2204afafdb08608f2d4b08774b267ead0f170",
                257, "d723a0b83270fe32b498f00caa23170b06daffac225b54ccddcbcfa9ccecfc66",
                65_535, "12ad5d919572403e7e8bf7d602e852519b86b7707c1687e806fa5e4829bfeb9d",
                65_536, "13891c36f5158bf0735cd637e0874306e9b7309628360abb3272828b0e3d440a",
                65_537, "f17441c52833dcce6a6c977366fa4f5ad1a6b867cc2083c6c1cd06eb6172b7a2",
                70_000, "29715e309bd783102a94b740335698251124fa1ba6694e651109f59fbe909107"));
        GrownTree tree = new GrownTree();
        List<Leaf> leaves = new ArrayList<>();
        for (int i = 1; i <= 70_000; i++) {
            Leaf leaf = new Leaf("ticket/40718-6", i, Hash.sha256(ascii(String.valueOf(i))));
            leaves.add(leaf);
            tree.add(leaf.bytes());
            String root = roots.get(i);
            if (root != null) {
                assertEquals(root, tree.root().hex());
            }
        }
        roots.forEach((size, root) -> assertEquals(root, tree.at(size).root().hex()));
        assertIs(
                8192,
                "813367e9575909220d8404de4f7d4973ce940d4536a66b50869e02b8e50cbbae",
                tree.read(tile("tile/0/000")));
        assertIs(
                8192,
                "f8bf0744255c94ab386c31b3f99132643e94a83987a90b39d994683494bfc2f9",
                tree.read(tile("tile/0/272")));
        assertIs(
                3584,
                "0b936cfc06eb793e9b2b4b19c5ed5faf758c09b9bf56439c2953545743736e45",
                tree.read(tile("tile/0/273.p/112")));
        assertIs(
                8192,
                "f6b22974c2c21188d21bdaaee3d43f551109ad8515b379733e969f3608056658",
                tree.read(tile("tile/1/000")));
        assertIs(
                544,
                "472a2d31ea4446a37778b8b1414810d6bcb7f517861c987788c4bf9f11907697",
                tree.read(tile("tile/1/001.p/17")));
        assertIs(
                32,
                "bb0b69ad8c79498450fdff217b303c9a96250b4776a3cae2fc6b8d0be829db19",
                tree.read(tile("tile/2/000.p/1")));
        assertIs(
                23_700,
                "1e636c0492a678f4945caa754399ce3fbdcbc2c8135f151ef5b912184fb83b2d",
                EntryBundle.write(leaves.subList(0, 256)));
        assertIs(
                24_320,
                "781ed304be6013cdd56ea6f9203d6339b5f684c88ab82ae3dbafa1457f38ec4b",
                EntryBundle.write(leaves.subList(272 * 256, 273 * 256)));
        assertIs(
                10_640,
                "cd349a24d780ef59975344e969fa0961bd8b564fc880b7020aa6e542b5cf54b5",
                EntryBundle.write(leaves.subList(273 * 256, 70_000)));
        assertPath(
                17,
                "6e2c09e79004f4bf163452f8b8a0bea6edfa410f829470612e7b4be6a9fa6a65",
                tree.at(70_000).inclusion(65_000));
        assertPath(
                15,
                "9c12a7217a5b3184a12ad1efb353e02454f49906b3fe7a1a2bf67c11681b40d7",
                tree.at(70_000).consistency(65_537));
        assertPath(
                1,
                "b061fee6d8097fb5edeb24de50355f928b69fe49ab84e918e28738d963f1e613",
                tree.at(70_000).consistency(65_536));
    }

    private static void assertPath(int hashes, String sha256, List<Hash> path) {
        assertEquals(hashes, path.size());
        assertEquals(
                sha256,
                NaiveTree.hex(NaiveTree.sha(path.stream().map(Hash::bytes).toArray(byte[][]::new))));
    }

    /** Over two levels of tiles a recomputation word for word would take too long: the proofs themselves say whether they hold. */
    @Test
    void proofsOverManyTiles_hold() {
        Random random = new Random(20260101);
        GrownTree tree = grown(some(70_000));
        for (int i = 0; i < 300; i++) {
            int to = 1 + random.nextInt(70_000);
            int from = 1 + random.nextInt(to);
            Hash root = tree.at(to).root();
            assertTrue(MerkleProofs.extendsTree(
                    from, tree.at(from).root(), to, root, tree.at(to).consistency(from)));
            int index = random.nextInt(to);
            assertTrue(MerkleProofs.includes(
                    index, to, Hash.ofLeaf(ascii("leaf " + index)), tree.at(to).inclusion(index), root));
        }
    }

    @Test
    void aFrontier_goesOnWhereItWasStored() {
        Frontier whole = Frontier.empty();
        for (byte[] leaf : some(100)) {
            Frontier restored = new Frontier(whole.size(), whole.subtrees(), (level, n, hash) -> {});
            whole.add(Hash.ofLeaf(leaf));
            restored.add(Hash.ofLeaf(leaf));
            assertEquals(whole.root(), restored.root());
        }
        assertThrows(IllegalArgumentException.class, () -> new Frontier(3, whole.subtrees(), (level, n, hash) -> {}));
    }
}
