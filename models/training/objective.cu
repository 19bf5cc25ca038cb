// Forward and backward over the frames of one sound a block, in the log domain.
#include <torch/extension.h>

namespace {
constexpr float NEVER = -1e30f;

__device__ inline float add(float a, float b) {
  float high = fmaxf(a, b), low = fminf(a, b);
  return low < -1e29f ? high : high + log1pf(expf(low - high));
}

// scores [B, T, 2P]: of the first frame in a phone (even), of a further one (odd).
// chain [B, M]: phones in order; optional [B, M]; size [B]: phones in each chain; frames [B].
// alpha [B, T, M] is room to work in; total [B] gets the log sum; gradient [B, T, 2P] gets `sign` times the occupancy.
__global__ void chains(const float* scores, const int* chain, const bool* optional, const int* size, const int* frames,
                       float* alpha, float* total, float* gradient, float sign, int T, int W, int M) {
  extern __shared__ float room[];
  float *now = room, *then = room + M + 2;
  const int b = blockIdx.x, j = threadIdx.x, J = size[b], F = frames[b];
  scores += (long)b * T * W; gradient += (long)b * T * W; alpha += (long)b * T * M;
  chain += b * M; optional += b * M;
  const bool mine = j < J;
  const int phone = mine ? chain[j] : 0;
  const bool skip = mine && j >= 2 && optional[j - 1];
  float a = NEVER;
  if (mine && (j == 0 || (j == 1 && optional[0]))) a = scores[2 * phone];
  if (j < M) alpha[j] = a;
  for (int t = 1; t < F; t++) {
    if (j < M) now[j] = a;
    __syncthreads();
    if (mine) {
      const float* s = scores + (long)t * W;
      float entered = j >= 1 ? now[j - 1] : NEVER;
      if (skip) entered = add(entered, now[j - 2]);
      a = add(a + s[2 * phone + 1], entered + s[2 * phone]);
    }
    if (j < M) alpha[(long)t * M + j] = a;
    __syncthreads();
  }
  if (j < M) now[j] = a;
  __syncthreads();
  const bool open = optional[J - 1];
  float z = now[J - 1];
  if (open && J > 1) z = add(z, now[J - 2]);
  if (j == 0) total[b] = z;
  if (z < -1e20f) return;
  float beta = mine && (j == J - 1 || (open && j == J - 2)) ? 0.f : NEVER;
  __syncthreads();
  for (int t = F - 1; t >= 1; t--) {
    const float* s = scores + (long)t * W;
    const float* before = alpha + (long)(t - 1) * M;
    float enter = NEVER, stay = NEVER;
    if (mine) {
      enter = beta + s[2 * phone];
      stay = beta + s[2 * phone + 1];
      float entered = j >= 1 ? before[j - 1] : NEVER;
      if (skip) entered = add(entered, before[j - 2]);
      float p = expf(fminf(entered + enter - z, 0.f)), q = expf(fminf(before[j] + stay - z, 0.f));
      if (p > 1e-8f) atomicAdd(gradient + (long)t * W + 2 * phone, sign * p);
      if (q > 1e-8f) atomicAdd(gradient + (long)t * W + 2 * phone + 1, sign * q);
    }
    if (j < M) { now[j] = enter; then[j] = skip ? enter : NEVER; }
    if (j < 2) { now[M + j] = NEVER; then[M + j] = NEVER; }
    __syncthreads();
    if (mine) beta = add(stay, add(now[j + 1], then[j + 2 < M + 2 ? j + 2 : M + 1]));
    __syncthreads();
  }
  if (mine) {
    float p = expf(fminf(alpha[j] + beta - z, 0.f));
    if (p > 1e-8f) atomicAdd(gradient + 2 * phone, sign * p);
  }
}

// Any phone after any other: moves [P, P] (log), begin [P] (log). entered [B, T, P] is room to work in.
__global__ void loops(const float* scores, const float* moves, const float* begin, const int* frames, float* alpha,
                      float* entered, float* total, float* gradient, float sign, int T, int P) {
  extern __shared__ float room[];
  float* likely = room;            // exp(moves), [P][P]
  float* line = room + P * P;      // one number a phone
  float* top = line + P;
  const int b = blockIdx.x, q = threadIdx.x, F = frames[b], W = 2 * P;
  scores += (long)b * T * W; gradient += (long)b * T * W; alpha += (long)b * T * P; entered += (long)b * T * P;
  for (int i = q; i < P * P; i += blockDim.x) likely[i] = expf(moves[i]);
  const bool mine = q < P;
  float a = mine ? begin[q] + scores[2 * q] : NEVER;
  if (mine) alpha[q] = a;
  for (int t = 1; t < F; t++) {
    if (mine) line[q] = a;
    __syncthreads();
    float high = NEVER;
    for (int p = 0; p < P; p++) high = fmaxf(high, line[p]);
    __syncthreads();
    if (mine) line[q] = expf(a - high);
    __syncthreads();
    if (mine) {
      float sum = 0.f;
      for (int p = 0; p < P; p++) sum += line[p] * likely[p * P + q];
      float e = logf(fmaxf(sum, 1e-37f)) + high;
      const float* s = scores + (long)t * W;
      entered[(long)t * P + q] = e;
      a = add(a + s[2 * q + 1], e + s[2 * q]);
      alpha[(long)t * P + q] = a;
    }
    __syncthreads();
  }
  if (mine) line[q] = a;
  __syncthreads();
  float high = NEVER;
  for (int p = 0; p < P; p++) high = fmaxf(high, line[p]);
  float sum = 0.f;
  for (int p = 0; p < P; p++) sum += expf(line[p] - high);
  const float z = high + logf(sum);
  if (q == 0) total[b] = z;
  float beta = 0.f;
  __syncthreads();
  for (int t = F - 1; t >= 1; t--) {
    const float* s = scores + (long)t * W;
    float enter = NEVER, stay = NEVER;
    if (mine) {
      enter = beta + s[2 * q];
      stay = beta + s[2 * q + 1];
      float x = expf(fminf(entered[(long)t * P + q] + enter - z, 0.f));
      float y = expf(fminf(alpha[(long)(t - 1) * P + q] + stay - z, 0.f));
      gradient[(long)t * W + 2 * q] += sign * x;
      gradient[(long)t * W + 2 * q + 1] += sign * y;
      line[q] = enter;
    }
    __syncthreads();
    float peak = NEVER;
    for (int p = 0; p < P; p++) peak = fmaxf(peak, line[p]);
    __syncthreads();
    if (mine) line[q] = expf(enter - peak);
    __syncthreads();
    if (mine) {
      float total_out = 0.f;
      for (int n = 0; n < P; n++) total_out += likely[q * P + n] * line[n];
      beta = add(stay, logf(fmaxf(total_out, 1e-37f)) + peak);
    }
    __syncthreads();
  }
  if (mine) gradient[2 * q] += sign * expf(fminf(alpha[q] + beta - z, 0.f));
}
}  // namespace

void chains_pass(torch::Tensor scores, torch::Tensor chain, torch::Tensor optional, torch::Tensor size,
                 torch::Tensor frames, torch::Tensor total, torch::Tensor gradient, double sign) {
  const int B = scores.size(0), T = scores.size(1), W = scores.size(2), M = chain.size(1);
  auto alpha = torch::empty({B, T, M}, scores.options());
  const int threads = (M + 31) / 32 * 32;
  chains<<<B, threads, sizeof(float) * 2 * (M + 2)>>>(
      scores.data_ptr<float>(), chain.data_ptr<int>(), optional.data_ptr<bool>(), size.data_ptr<int>(),
      frames.data_ptr<int>(), alpha.data_ptr<float>(), total.data_ptr<float>(), gradient.data_ptr<float>(), sign, T, W, M);
}

void loops_pass(torch::Tensor scores, torch::Tensor moves, torch::Tensor begin, torch::Tensor frames,
                torch::Tensor total, torch::Tensor gradient, double sign) {
  const int B = scores.size(0), T = scores.size(1), P = scores.size(2) / 2;
  auto alpha = torch::empty({B, T, P}, scores.options());
  auto entered = torch::empty({B, T, P}, scores.options());
  const int threads = (P + 31) / 32 * 32;
  loops<<<B, threads, sizeof(float) * (P * P + P + 1)>>>(
      scores.data_ptr<float>(), moves.data_ptr<float>(), begin.data_ptr<float>(), frames.data_ptr<int>(),
      alpha.data_ptr<float>(), entered.data_ptr<float>(), total.data_ptr<float>(), gradient.data_ptr<float>(), sign, T, P);
}
