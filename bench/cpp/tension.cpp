// The tension simulation as one would first write it: one trial after another, one stitch after another,
// Box-Muller normals with both values used, the C library's functions, the colour by table look-up.
// Kept to compare speeds with; whole sections, no bias, no dye variation, rows checked by feel.
//
//   tension [stitches rows trials spread memory seed]
// prints: stitches per second, median share in planned colour.

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <vector>

namespace {

// xoshiro256++ by Blackman and Vigna, seeded by SplitMix64.
class Random {
public:
    explicit Random(std::uint64_t seed) {
        for (auto& word : state_) {
            seed += 0x9e3779b97f4a7c15;
            std::uint64_t z = seed;
            z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9;
            z = (z ^ (z >> 27)) * 0x94d049bb133111eb;
            word = z ^ (z >> 31);
        }
    }

    double normal() {
        if (has_spare_) {
            has_spare_ = false;
            return spare_;
        }
        const double radius = std::sqrt(-2.0 * std::log(uniform()));
        const double angle = 6.283185307179586 * uniform();
        spare_ = radius * std::sin(angle);
        has_spare_ = true;
        return radius * std::cos(angle);
    }

private:
    static std::uint64_t rotate(std::uint64_t x, int k) { return (x << k) | (x >> (64 - k)); }

    std::uint64_t next() {
        const std::uint64_t result = rotate(state_[0] + state_[3], 23) + state_[0];
        const std::uint64_t t = state_[1] << 17;
        state_[2] ^= state_[0];
        state_[3] ^= state_[1];
        state_[1] ^= state_[2];
        state_[0] ^= state_[3];
        state_[2] ^= t;
        state_[3] = rotate(state_[3], 45);
        return result;
    }

    // In (0, 1].
    double uniform() { return static_cast<double>((next() >> 11) + 1) * 0x1p-53; }

    std::uint64_t state_[4];
    double spare_ = 0;
    bool has_spare_ = false;
};

}  // namespace

int main(int argc, char** argv) {
    const int stitches = argc > 1 ? std::atoi(argv[1]) : 83;
    const int rows = argc > 2 ? std::atoi(argv[2]) : 72;
    const int trials = argc > 3 ? std::atoi(argv[3]) : 2000;
    const double spread = argc > 4 ? std::atof(argv[4]) : 0.01;
    const double memory = argc > 5 ? std::atof(argv[5]) : 50;
    const std::uint64_t seed = argc > 6 ? std::strtoull(argv[6], nullptr, 10) : 1;
    const double hands = 0.06;

    std::vector<int> colour_at;
    const int sections[] = {5, 4, 6, 7};
    for (int j = 0; j < 4; j++) colour_at.insert(colour_at.end(), sections[j], j);
    const int sequence = static_cast<int>(colour_at.size());

    std::vector<int> planned;
    for (int i = 0; i < stitches * rows; i++) planned.push_back(colour_at[i % sequence]);

    const double rho = std::exp(-1 / memory);
    const double innovation = spread * std::sqrt(1 - rho * rho);
    std::vector<double> shares;

    const auto begin = std::chrono::steady_clock::now();
    for (int trial = 0; trial < trials; trial++) {
        Random random(seed * 1000003 + trial);
        double tension = spread * random.normal();
        double error = 0;       // stitches of yarn used beyond the plan
        double place = 0;       // where the yarn is within its sequence
        double correction = 0;
        int right = 0;
        for (int row = 0; row < rows; row++) {
            const int* plan = &planned[row * stitches];
            for (int i = 0; i < stitches; i++) {
                tension = rho * tension + innovation * random.normal();
                const double departure = tension + correction;
                const double used = 1 + departure;
                double middle = place + used / 2;
                if (middle >= sequence) middle -= sequence;
                right += colour_at[static_cast<int>(middle)] == plan[i];
                place += used;
                if (place >= sequence) place -= sequence;
                error += departure;
            }
            const double drift = error - sequence * std::round(error / sequence);
            correction = std::clamp(-std::round(drift) / stitches, -hands, hands);
        }
        shares.push_back(static_cast<double>(right) / (stitches * rows));
    }
    const std::chrono::duration<double> elapsed = std::chrono::steady_clock::now() - begin;

    std::sort(shares.begin(), shares.end());
    std::printf("%.0f %.4f\n", static_cast<double>(trials) * rows * stitches / elapsed.count(), shares[shares.size() / 2]);
}
